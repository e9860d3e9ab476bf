const KEY = 'cupbook-asked-to-last';

/** Some browsers ask the reader: not again before a week. */
const DAYS = 7;

/**
 * Asks the browser not to throw away what it keeps for this site; some do so with pages that were not seen for a week. Whatever it answers,
 * nothing is said of it: the match can be exported.
 *
 * @param now ms, as of `Date.now()`
 */
export async function askToLast(now: number): Promise<void> {
  try {
    // Not there on a page of plain http.
    const storage: StorageManager | undefined = navigator.storage;
    if (storage?.persist === undefined || (await storage.persisted())) return;
    if (now - Number(localStorage.getItem(KEY) ?? 0) < DAYS * 24 * 60 * 60 * 1000) return;
    localStorage.setItem(KEY, String(now));
    await storage.persist();
  } catch {
    // A browser that keeps nothing between visits cannot promise more.
  }
}
