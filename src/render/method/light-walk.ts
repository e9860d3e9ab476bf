import { randomFrom } from '../../values/random-from.ts';

/** A ray that came back out of plastic: its corners, mm, from where it went in, and downwards from the skin. */
export interface LightWalk {
  readonly corners: readonly (readonly [across: number, down: number])[];
  /** All its way in plastic, mm. */
  readonly wayMm: number;
  /** How often it was scattered. */
  readonly turns: number;
}

/** So many rays are tried for one that fits a drawing. */
const TRIED = 400;

/** No corner of it is farther to a side than this part of the thickness, so that it stays in its drawing. */
const MOST_ASIDE = 0.6;

/**
 * A ray that goes straight down into plastic on a card and comes back out, for a drawing: between two turns it goes as far as chance has it, at
 * so many turns a millimetre; at each it goes on in any direction of the drawing, and at the card straight back up. Of the same numbers the
 * same ray: that with most nearly so many turns of some that stay near where they went in.
 *
 * @param perMm how often light is scattered on a millimetre
 * @param turns how many are wanted
 */
export function lightWalk(perMm: number, thicknessMm: number, turns: number): LightWalk {
  const walks = Array.from({ length: TRIED }, (_, seed) => walked(perMm, thicknessMm, randomFrom(`ray ${seed}`)));
  const near = walks.filter(({ corners }) => corners.every(([across]) => Math.abs(across) <= MOST_ASIDE * thicknessMm));
  const [best] = (near.length > 0 ? near : walks).sort(
    (one, other) => Math.abs(one.turns - turns) - Math.abs(other.turns - turns),
  );
  return best!;
}

/** A ray that is scattered more often has left a drawing long ago. */
const MOST_CORNERS = 500;

function walked(perMm: number, thicknessMm: number, random: () => number): LightWalk {
  const corners: [number, number][] = [[0, 0]];
  let [across, down, wayMm, turns] = [0, 0, 0, 0];
  let angle = 0;
  while (corners.length < MOST_CORNERS) {
    const free = perMm > 0 ? -Math.log(1 - random()) / perMm : Number.POSITIVE_INFINITY;
    const [sideways, downwards] = [Math.sin(angle), Math.cos(angle)];
    const wall =
      downwards > 0 ? (thicknessMm - down) / downwards : downwards < 0 ? -down / downwards : Number.POSITIVE_INFINITY;
    const step = Math.min(free, wall);
    across += step * sideways;
    down += step * downwards;
    wayMm += step;
    corners.push([across, down]);
    if (wall <= free && downwards < 0) break;
    // A card sends light back every way; the drawing has it go straight up.
    angle = wall <= free ? Math.PI : 2 * Math.PI * random();
    if (wall > free) turns++;
  }
  return { corners, wayMm, turns };
}
