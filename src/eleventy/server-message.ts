/** What Eleventy's server tells of itself when it starts. */
interface ServerStart {
  readonly hosts?: readonly string[];
  readonly localhostUrl?: string;
}

/**
 * Where to look at the book, on this machine and from a phone.
 *
 * @example serverStartMessage({ localhostUrl: 'http://localhost:8080/', hosts: ['http://localhost:8080/'] })
 */
export function serverStartMessage({ hosts = [], localhostUrl }: ServerStart): string {
  const here = localhostUrl ?? hosts.find((host) => host.includes('//localhost')) ?? '';
  const others = hosts.filter((host) => host !== here);
  const phone = others.length === 0 ? '' : `\nOn a phone in the same network: ${others.join(' or ')}`;
  return `The book is open at ${here}${phone}\nStop with Ctrl+C.`;
}
