import type { DiagnosticCode } from '../../src/diagnostics/catalogue.ts';
import { file, type HostileFiles, SOUND_BOOK } from './sound-book.ts';

/** A book that means no good: its name, what differs from the sound one, and every code that is told of it; `builds` where there is nothing to tell. */
export type HostileBook = readonly [string, HostileFiles, 'builds' | readonly DiagnosticCode[]];

const DUSK = 'colours/dusk.md';

/** Dusk with other front matter and notes. */
export const dusk = (front: string, notes = ''): HostileFiles => ({ [DUSK]: file(front, notes) });

/** Dusk of one plain cup, with more fields of the recipe. */
export const duskWith = (fields: string, notes = ''): HostileFiles =>
  dusk(
    `title: Dusk\nmold: minnow\n${fields}\ncups: { body: { plastic: 120 ml supple, add: { peat: 9 drops } } }`,
    notes,
  );

/** Dusk of one cup that has these fields. */
export const duskCup = (fields: string): HostileFiles =>
  dusk(`title: Dusk\nmold: minnow\ncups: { body: { ${fields} } }`);

/** A file of the sound book with a part of its text exchanged. */
export const instead = (path: string, part: string, other: string): HostileFiles => {
  const text = SOUND_BOOK[path];
  if (text?.includes(part) !== true) throw new RangeError(`${path} of the sound book does not hold ${part}`);
  return { [path]: text.replace(part, () => other) };
};

/** A file of the sound book with one more line of front matter. */
export const also = (path: string, line: string): HostileFiles => instead(path, '---\n', `---\n${line}\n`);
