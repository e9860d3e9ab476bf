import type { Texts } from './sites.ts';

/** The n-th of many sites: each has other files than the one before, and all say which one they are of. */
export function numberedSite(n: number): Texts {
  const pages = Array.from({ length: 12 }, (_, page) => `pages/${(page * 7 + n * 5) % 40}/index.html`);
  return Object.fromEntries(['a.css', ...pages, 'index.html'].map((path) => [path, `site ${n}`]));
}
