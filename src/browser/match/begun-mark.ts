/**
 * Whether a match of this book goes on, told to the page's styles before anything is painted: the match itself comes later.
 *
 * @packageDocumentation
 */

/** Two books of one host have matches of their own. */
const keyOf = (): string => `book-match ${new URL(document.documentElement.dataset.root ?? './', location.href).href}`;

/** Marks the page as it was left. */
export function markAsLeft(): void {
  try {
    mark(localStorage.getItem(keyOf()) !== null);
  } catch {
    // Then the page begins as with no match.
  }
}

/** Marks the page, and how it is left. */
export function markBegun(begun: boolean): void {
  mark(begun);
  try {
    if (begun) localStorage.setItem(keyOf(), '');
    else localStorage.removeItem(keyOf());
  } catch {
    // Where nothing is kept a match does not go on.
  }
}

function mark(begun: boolean): void {
  document.documentElement.toggleAttribute('data-match-begun', begun);
}
