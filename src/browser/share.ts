/**
 * The button that copies the address of a page, where the browser lets a page copy.
 *
 * @packageDocumentation
 */

for (const part of document.querySelectorAll<HTMLElement>('[data-share]')) {
  const button = part.querySelector('button');
  const status = part.querySelector('[role="status"]');
  if (button === null || status === null || navigator.clipboard === undefined) continue;
  part.hidden = false;
  button.addEventListener('click', async () => {
    // Without the place on the page, but with a batch that was planned.
    const address = location.origin + location.pathname + location.search;
    try {
      await navigator.clipboard.writeText(address);
      status.textContent = 'Copied.';
    } catch {
      status.textContent = `Your browser won’t let this page copy. The link is ${address}`;
    }
  });
}
