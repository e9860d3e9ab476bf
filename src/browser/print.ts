/**
 * The print button of cards and labels.
 *
 * @packageDocumentation
 */

for (const button of document.querySelectorAll<HTMLButtonElement>('[data-print]')) {
  button.hidden = false;
  button.addEventListener('click', () => window.print());
}
