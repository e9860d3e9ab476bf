import { readFile } from 'node:fs/promises';
import type { Plugin } from 'esbuild';

/** A part of a package that no page asks for. */
interface Unused {
  /** The file, as esbuild finds it. */
  readonly file: RegExp;
  readonly part: RegExp;
  readonly instead: string;
}

const UNUSED: readonly Unused[] = [
  // The names of colours: pages take digits.
  { file: /culori[\\/]src[\\/]colors[\\/]named\.js$/, part: /const named = \{[^}]*\}/, instead: 'const named = {}' },
  // The 1,024 marks of a kind that no card has.
  {
    file: /js-aruco2[\\/]src[\\/]aruco\.js$/,
    part: /(\bARUCO: \{[^[\]}]*codeList: )\[[^\]]*\]/,
    instead: '$1[]',
  },
];

/**
 * Leaves out of what is bundled for pages what is large in others' packages and asked for by none.
 *
 * Fails the build where a package has come to look otherwise.
 */
export const lighterPackages: Plugin = {
  name: 'lighter packages',
  setup: ({ onLoad }) => {
    for (const { file, part, instead } of UNUSED)
      onLoad({ filter: file }, async ({ path }) => {
        const text = await readFile(path, 'utf8');
        if (!part.test(text)) throw new Error(`${path} no longer has what is left out of it; look at ${part}`);
        return { contents: text.replace(part, instead) };
      });
  },
};
