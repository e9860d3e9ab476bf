import type { Page } from 'playwright-core';

/**
 * Loads the page anew, and tells from then on how much of it has moved by itself since it was loaded last: Cumulative Layout Shift, all of
 * the visit together.
 *
 * @param begun what is there once the page has begun
 */
export async function watchShifts(page: Page, begun: string): Promise<() => Promise<number>> {
  await page.addInitScript(() => {
    const watched = window as unknown as { moved: number };
    watched.moved = 0;
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEntry & { hadRecentInput: boolean; value: number })[])
        if (!entry.hadRecentInput) watched.moved += entry.value;
    }).observe({ type: 'layout-shift', buffered: true });
  });
  await page.reload();
  await page.locator(begun).waitFor();
  return () => page.evaluate(() => (window as unknown as { moved: number }).moved);
}
