import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { HtmlValidate } from 'html-validate';
import { expect, inject, test } from 'vitest';
import { filesBelow } from '../folder-tree.ts';

test('every page is valid HTML', async () => {
  const site = inject('site');
  const validator = new HtmlValidate({
    extends: ['html-validate:recommended'],
    // `<!doctype html>` in lower case is as valid, and integrity guards files of other hosts, of which there are none.
    rules: { 'doctype-style': 'off', 'require-sri': 'off' },
  });
  const pages = filesBelow(site).filter((path) => path.endsWith('.html'));
  expect(pages.length).toBeGreaterThan(100);
  const faults: string[] = [];
  for (const path of pages) {
    const report = await validator.validateString(readFileSync(join(site, path), 'utf8'), path);
    for (const { messages } of report.results) {
      for (const { line, column, ruleId, message } of messages)
        faults.push(`${path}:${line}:${column} ${ruleId} ${message}`);
    }
  }
  expect(faults.slice(0, 20)).toEqual([]);
});
