import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { printable } from '../eleventy/printable.ts';
import type { Command, Option } from './command.ts';
import { filmsCommand as runFilms } from './films.ts';

const FILES: Readonly<Record<string, Option>> = {
  measurements: { value: 'FILE', help: 'measured films: composition, surface, and the reflectance at each wavelength' },
  films: { value: 'FILE', help: 'films to predict: the same columns, the reflectance being that of the backing' },
  out: { value: 'FILE', help: 'where to write the predictions (default: the screen)' },
};

/** `cupbook films`, with files and a screen. */
export const filmsCommand: Command = {
  name: 'films',
  usage: '--measurements FILE --films FILE [--out FILE]',
  summary: 'predict how films of measured paints look, as CSV',
  words: [0, 0],
  options: FILES,
  run(_words, values, { from }) {
    const args = Object.keys(FILES).flatMap((name) => {
      const value = values[name];
      return typeof value === 'string' ? [`--${name}`, value] : [];
    });
    return runFilms(args, {
      readText: (path) => readFileSync(resolve(from, path), 'utf8'),
      writeText: (path, text) => writeFileSync(resolve(from, path), text),
      print: (text) => console.log(text),
      printError: (text) => console.error(printable(text)),
    });
  },
};
