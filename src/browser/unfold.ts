/**
 * Opens what a page has folded where it is asked for by an address, and where there is room for it. Browsers do some of this by themselves,
 * not all of them all of it.
 *
 * @packageDocumentation
 */

/** What is linked to is shown, however deep it is folded. */
function openAsked(): void {
  if (location.hash.length < 2) return;
  const asked = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  if (asked === null) return;
  for (let around = asked.closest('details'); around !== null; around = around.parentElement!.closest('details'))
    around.open = true;
  asked.scrollIntoView();
}

// How far off a colour may be is seen at once where a page has room for its colours.
if (window.matchMedia('(min-width: 60rem)').matches) {
  for (const details of document.querySelectorAll<HTMLDetailsElement>('.fold > details:has(.aparts)'))
    details.open = true;
}

openAsked();
window.addEventListener('hashchange', openAsked);
