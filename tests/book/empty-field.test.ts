import { expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { EXAMPLE_BOOK } from '../../src/diagnostics/examples.ts';

/** Files with every field filled in, a line each. */
const FILES: Readonly<Record<string, readonly string[]>> = {
  'shelf/colorants/clay.md': ['title: Clay', 'look:', '  kind: dye', '  colour: "#a05a30"', '  dose: 1 %', 'price: 3'],
  'shelf/colorants/loam.md': [
    'title: Loam',
    'look:',
    '  kind: dye',
    '  colour: "#a05a30"',
    '  dose: 1 %',
    '  thickness: 2 mm',
  ],
  'molds/craw.md': ['title: Craw', 'cavity: 6 ml', 'body: 9 mm', 'thin: 2 mm', 'length: 80 mm'],
  'molds/worm.md': ['title: Worm', 'bait: 6 g', 'body: 9 mm', 'sprue: 3 ml'],
  'targets/carp.md': ['title: Carp', 'over-white: "#8a5a2b"', 'over-black: "#4c3a20"', 'thickness: 9 mm'],
  'colours/rush.md': [
    'title: Rush',
    'mold: minnow',
    'baits: 20',
    'cups:',
    '  body:',
    '    plastic: 60 ml supple',
    '    share: 100%',
  ],
};

const told = (path: string, lines: readonly string[]): ReturnType<typeof compileBook>['diagnostics'] => {
  const files = { ...EXAMPLE_BOOK, [path]: `---\n${lines.join('\n')}\n---\n` };
  return compileBook(Object.entries(files).map(([path, text]) => ({ path, text }))).diagnostics;
};
const isError = ({ severity }: { severity: string }): boolean => severity === 'error';

const CASES = Object.entries(FILES).flatMap(([path, lines]) =>
  lines.flatMap((line, index) => (line.endsWith(':') ? [] : [{ path, lines, line, index }])),
);

test.each(CASES)(
  'an empty field may be removed only where the file is right without: $path, $line',
  ({ path, lines, line, index }) => {
    expect(told(path, lines).filter(isError)).toEqual([]);
    const emptied = lines.with(index, line.replace(/:.*/, ':'));
    const [fix] = told(path, emptied).flatMap(({ code, fix }) => (code === 'field/to-fill-in' ? [fix] : []));
    const without = told(path, lines.toSpliced(index, 1)).filter(isError);
    expect(fix).toMatch(
      without.length === 0 ? /, or remove the line if it is not needed$/ : /^write it after `[a-z-]+:`$/,
    );
  },
);
