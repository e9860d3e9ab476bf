import { LinkChecker } from 'linkinator';
import { expect, inject, test } from 'vitest';
import { filesBelow } from '../folder-tree.ts';

test('every link leads somewhere, and every page can be reached from the first', async () => {
  const address = inject('address');
  const escaped = address.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  const { links } = await new LinkChecker().check({
    path: address,
    recurse: true,
    checkFragments: true,
    concurrency: 20,
    linksToSkip: [`^(?!${escaped})`],
  });
  const broken = links
    .filter(({ state }) => state === 'BROKEN')
    .map(
      ({ url, parent, status, failureDetails = [] }) =>
        `${parent} → ${url} (${status}) ${failureDetails.map(String).join()}`,
    );
  expect(broken).toEqual([]);

  const reached = new Set(
    links
      .filter(({ state }) => state === 'OK')
      .map(({ url }) => new URL(url).pathname.slice(new URL(address).pathname.length)),
  );
  const pages = filesBelow(inject('site'))
    .filter((path) => path.endsWith('.html') && path !== '404.html')
    .map((path) => path.replace(/index\.html$/, ''));
  expect(pages.length).toBeGreaterThan(100);
  expect(pages.filter((path) => !reached.has(path))).toEqual([]);
});
