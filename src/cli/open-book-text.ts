import type { BookServer } from '../server/start-server.ts';
import { terminalCode } from './terminal-code.ts';

/**
 * Where to look at the book, and who else can.
 *
 * @param onScreen whether a person sees it on a screen; else there is no code to scan
 */
export function openBookText(
  { url, phoneUrl, otherPhoneUrls = [], mineUrl }: Omit<BookServer, 'reload' | 'close'>,
  onScreen: boolean,
): string {
  const code = (text: string): readonly string[] => (onScreen ? ['', terminalCode(text), ''] : []);
  if (phoneUrl === undefined) return `The book is open at ${url} on this computer alone.\nStop with Ctrl+C.`;
  const others = otherPhoneUrls.length === 0 ? '' : ` (or ${otherPhoneUrls.join(', or ')})`;
  return [
    `The book is open at ${url} on this computer.`,
    `On a phone in the same network: ${phoneUrl}${others}`,
    ...code(phoneUrl),
    'Everybody in this network can read it there while this runs: what you publish, and nothing else.',
    ...(mineUrl === undefined
      ? []
      : [
          'For your own phone, with all the rest: scan this code, and show it to nobody. It is good until you stop this.',
          ...code(mineUrl),
          'It is not encrypted on its way: whoever listens in this network can read along. Use it only in one that you trust.',
        ]),
    'Stop with Ctrl+C.',
  ].join('\n');
}
