import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/**
 * What axe objects to on a page as it is shown now.
 *
 * @param rules all of them, or those that look at colours
 */
export async function violations(page: Page, rules: 'all' | 'colours'): Promise<readonly string[]> {
  await page.evaluate(AXE);
  const options: RunOptions = rules === 'all' ? {} : { runOnly: { type: 'tag', values: ['cat.color'] } };
  const results = await page.evaluate(
    (how): Promise<AxeResults> => (globalThis as unknown as { axe: typeof import('axe-core') }).axe.run(how),
    options,
  );
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 120)} ${failureSummary}`),
  );
}
