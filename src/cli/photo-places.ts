import { Refusal } from '../diagnostics/refusal.ts';
import type { Place } from '../measuring-card/measuring-card.ts';
import type { OptionValues } from './command.ts';

/** Two places, and four. */
export type Line = readonly [Place, Place];
export type FourPlaces = readonly [Place, Place, Place, Place];

const EXAMPLE = ['410,980', '1620,1010', '1600,1720', '400,1700'];
const WORDS: Readonly<Record<number, string>> = { 2: 'two', 4: 'four' };

/**
 * A line along the bait for each photo, from `--bait`: one for each, with `;` between them, and nothing where a photo needs none.
 *
 * Throws: Refusal where there are more lines than photos, or one of them is none.
 *
 * @example baitLines({ bait: '410,980 1620,1010' }, 2) // [[{ x: 410, y: 980 }, { x: 1620, y: 1010 }], undefined]
 */
export function baitLines({ bait }: OptionValues, photos: number): readonly (Line | undefined)[] {
  const lines = typeof bait === 'string' ? bait.split(';').map((line) => line.trim()) : [];
  if (lines.length > photos)
    throw new Refusal(
      `--bait has ${lines.length} lines for ${photos === 1 ? '1 photo' : `${photos} photos`}: give one for each, with ; between them.`,
    );
  return Array.from({ length: photos }, (_, at) => {
    const line = lines[at] ?? '';
    return line === '' ? undefined : (placesOf(line, 'bait', 2) as unknown as Line);
  });
}

/** Where the corner patches of a chart are, from `--corners`. Throws: Refusal where they are not four. */
export function chartCorners({ corners }: OptionValues): FourPlaces | undefined {
  return typeof corners === 'string' ? (placesOf(corners, 'corners', 4) as unknown as FourPlaces) : undefined;
}

function placesOf(text: string, name: string, count: number): readonly Place[] {
  const places = text
    .trim()
    .split(/\s+/)
    .flatMap((pair) => {
      const [, x, y] = /^(\d+(?:\.\d+)?),(\d+(?:\.\d+)?)$/.exec(pair) ?? [];
      return x === undefined ? [] : [{ x: Number(x), y: Number(y) }];
    });
  if (places.length === count && text.trim().split(/\s+/).length === count) return places;
  const example = EXAMPLE.slice(0, count).join(' ');
  throw new Refusal(
    `--${name} takes ${WORDS[count]} places, in pixels from the left and from the top: "${example}", not "${text}".`,
  );
}
