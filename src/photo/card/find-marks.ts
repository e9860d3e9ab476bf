import aruco from 'js-aruco2/src/aruco.js';
import type { Place } from '../../measuring-card/measuring-card.ts';
import type { Pixels } from '../pixels.ts';
import { type GreyPicture, greyPicture } from './grey-picture.ts';

/** A mark where it was seen: its corners in pixels of the photo, clockwise from its own left top. */
export interface SeenMark {
  readonly id: number;
  readonly corners: readonly Place[];
}

/**
 * Long sides at which a photo is looked at, in this order. What looks for marks sees edges of a few pixels only: in a dim and blurred photo
 * it finds them in a small picture alone, in a sharp one of a far card in a large one alone.
 */
const LONG_SIDES = [800, 400, 1600];

/** Of a mark's 36 cells so many may be read wrong. Codes differ in 12 at least; a printed word or a pattern is off by 10 or so. */
const MOST_WRONG_CELLS = 4;

/** A card has so many; further pictures are not looked at. */
const MARKS_OF_CARD = 4;

/** Corners that lie nearer than this, as part of a mark's side, are those of one mark seen twice. */
const SAME_MARK = 0.5;

/** The marks of a photo with these ids; of one id there are several where several cards lie in it. */
export function findMarks(pixels: Pixels, ids: readonly number[]): readonly SeenMark[] {
  const detector = new aruco.AR.Detector({
    dictionaryName: 'ARUCO_MIP_36h12',
    maxHammingDistance: MOST_WRONG_CELLS + 1,
  });
  const seen: SeenMark[] = [];
  for (const factor of factorsFor(Math.max(pixels.width, pixels.height))) {
    const picture = greyPicture(pixels, factor);
    for (const { id, corners, hammingDistance } of detector.detect(withFourBytes(picture))) {
      if (hammingDistance > MOST_WRONG_CELLS || !ids.includes(id)) continue;
      // The corner is the middle of its pixel.
      const mark = { id, corners: corners.map(({ x, y }) => ({ x: (x + 0.5) * factor, y: (y + 0.5) * factor })) };
      if (!seen.some((other) => isSame(mark, other))) seen.push(mark);
    }
    if (new Set(seen.map(({ id }) => id)).size >= MARKS_OF_CARD) break;
  }
  return seen;
}

/** Halvings of a photo that come nearest to the wanted sizes; none twice. */
function factorsFor(longSide: number): readonly number[] {
  const factors = LONG_SIDES.map((wanted) => 2 ** Math.max(0, Math.round(Math.log2(longSide / wanted))));
  return [...new Set(factors)];
}

/** What the detector takes: red, green, blue and opacity. */
function withFourBytes({ data, width, height }: GreyPicture) {
  const four = new Uint8Array(4 * data.length);
  for (let i = 0, at = 0; i < data.length; i++, at += 4) {
    const grey = data[i]!;
    four[at] = grey;
    four[at + 1] = grey;
    four[at + 2] = grey;
    four[at + 3] = 255;
  }
  return { data: four, width, height };
}

function isSame(mark: SeenMark, other: SeenMark): boolean {
  if (mark.id !== other.id) return false;
  const [corner, next] = mark.corners as [Place, Place];
  const side = Math.hypot(next.x - corner.x, next.y - corner.y);
  const [seen] = other.corners as [Place];
  return Math.hypot(seen.x - corner.x, seen.y - corner.y) < SAME_MARK * side;
}
