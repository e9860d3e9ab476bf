/** Your own computer shows one book today and another tomorrow at these names, and is asked for nothing through a network. */
const OWN_COMPUTER = /^(?:localhost|127(?:\.\d+){3}|\[::1\])$/;

/**
 * Has the browser keep what is opened of the book, for where there is no network; once the page is read.
 *
 * A browser allows it over https alone, and not from a disk.
 */
export function keepOffline(): void {
  const { protocol, hostname, href } = location;
  if (!isSecureContext || !protocol.startsWith('http') || OWN_COMPUTER.test(hostname)) return;
  if (!('serviceWorker' in navigator)) return;
  addEventListener('load', async () => {
    const root = new URL(document.documentElement.dataset.root || './', href).href;
    try {
      await navigator.serviceWorker.register(`${root}offline.js`);
      const { active } = await navigator.serviceWorker.ready;
      const loaded = performance.getEntriesByType('resource').map(({ name }) => name);
      active?.postMessage([href, ...loaded]);
    } catch {
      // A private window keeps nothing, and the page is read all the same.
    }
  });
}
