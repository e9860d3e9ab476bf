/**
 * Opens what a page has folded where there is room for it: beside a wide page nothing need be closed.
 *
 * @packageDocumentation
 */

if (window.matchMedia('(min-width: 60rem)').matches) {
  for (const details of document.querySelectorAll<HTMLDetailsElement>('.fold > details')) details.open = true;
}
