import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe leaves out unless it is asked: sizes of targets (WCAG 2.2, 2.5.8), names that say what is seen (2.5.3), cells without a head (1.3.1). */
const ASKED_FOR = ['target-size', 'label-content-name-mismatch', 'td-has-header'];

/**
 * What axe objects to on a page as it is shown now.
 *
 * @param rules all of them, or those that look at colours
 */
export async function violations(page: Page, rules: 'all' | 'colours'): Promise<readonly string[]> {
  await page.evaluate(AXE);
  // On a card, which is paper, an amount stands before the name that is its row's head, and no head has room above.
  await page.evaluate(() =>
    (globalThis as unknown as { axe: typeof import('axe-core') }).axe.configure({
      rules: [{ id: 'td-has-header', selector: 'table:not(.bench-card table)' }],
    }),
  );
  const options: RunOptions =
    rules === 'all'
      ? { rules: Object.fromEntries(ASKED_FOR.map((id) => [id, { enabled: true }])) }
      : { runOnly: { type: 'tag', values: ['cat.color'] } };
  const results = await page.evaluate(
    (how): Promise<AxeResults> => (globalThis as unknown as { axe: typeof import('axe-core') }).axe.run(how),
    options,
  );
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 120)} ${failureSummary}`),
  );
}
