import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { findingText } from '../book/films/films-finding.ts';
import { predictFilms } from '../book/films/predict-films.ts';
import { printable } from '../shell/printable.ts';
import type { Command } from './command.ts';

/** `cupbook films` */
export const filmsCommand: Command = {
  name: 'films',
  usage: '--measurements FILE --films FILE [--out FILE]',
  summary: 'predict how films of measured paints look, as CSV',
  words: [0, 0],
  options: {
    measurements: {
      value: 'FILE',
      help: 'measured films: composition, surface, and the reflectance at each wavelength',
    },
    films: { value: 'FILE', help: 'films to predict: the same columns, with the reflectance of the backing' },
    out: { value: 'FILE', help: 'where to write the predictions (default: the screen)' },
  },
  details:
    'A composition is paint=fraction;… A surface is bare_black, bare_white, film_on_black or film_on_white; other backings likewise. A column density (g/ml of a paint, in the rows of that paint alone) makes mixtures surer.',
  run(_words, { measurements, films, out }, { from }) {
    if (typeof measurements !== 'string' || typeof films !== 'string') {
      console.error(
        `The option --${typeof measurements === 'string' ? 'films' : 'measurements'} is missing: give it a file.`,
      );
      return 2;
    }
    const textOf = (path: string): string => readFileSync(resolve(from, path), 'utf8');
    const { predictions, findings, summary } = predictFilms(textOf(measurements), textOf(films), {
      measurements,
      films,
    });
    for (const finding of findings) console.error(printable(findingText(finding)));
    if (summary !== undefined) console.error(printable(summary));
    if (predictions !== undefined) {
      if (typeof out === 'string') writeFileSync(resolve(from, out), predictions);
      else console.log(predictions.trimEnd());
    }
    return predictions === undefined || findings.some(({ severity }) => severity === 'error') ? 1 : 0;
  },
};
