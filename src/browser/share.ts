/**
 * The button that hands the address of a page on: to the device’s own list of whom to send it to, where there is one, or else as a copy.
 *
 * @packageDocumentation
 */

/** The page without the place on it, but with a batch that was planned. */
const address = (): string => location.origin + location.pathname + location.search;

/** Copies the address; gives what is said of it. */
async function copied(): Promise<string> {
  try {
    await navigator.clipboard.writeText(address());
    return 'Copied.';
  } catch {
    return `Your browser won’t let this page copy. The link is ${address()}`;
  }
}

/** Asks the device to send the page on; gives what is said of it. */
async function sent(): Promise<string> {
  try {
    await navigator.share({ title: document.title, url: address() });
    return '';
  } catch (error) {
    const wasLeft = error instanceof DOMException && error.name === 'AbortError';
    return wasLeft ? '' : copied();
  }
}

for (const part of document.querySelectorAll<HTMLElement>('[data-share]')) {
  const button = part.querySelector('button');
  const status = part.querySelector('[role="status"]');
  const canSend = 'share' in navigator;
  if (button === null || status === null || (!canSend && navigator.clipboard === undefined)) continue;
  if (canSend) button.textContent = 'Send link';
  part.hidden = false;
  button.addEventListener('click', async () => {
    status.textContent = canSend ? await sent() : await copied();
  });
}
