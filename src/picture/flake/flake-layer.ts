/**
 * The flake of a bait, piece by piece, over whatever is below it.
 *
 * @packageDocumentation
 */
import type { Run } from '../../patterns/place.ts';
import type { BaitField } from '../../shapes/bait-field.ts';
import { zeroes } from '../kept-arrays.ts';
import type { PicturedBait, PicturedFlake } from '../pictured-bait.ts';
import { thickestOf } from '../thickest.ts';
import { FACE_AND_VEIL, FlakeColours } from './flake-colours.ts';
import { type FlakeOutline, flakeOutline } from './flake-outline.ts';
import { flattestCosine, type PlacedFlakes, placedFlakes, plasticOf } from './placed-flakes.ts';
import { type Shine, shineOf } from './shine.ts';
import { Stamp } from './stamp.ts';

/**
 * Flake as it lies in a bait: linear sRGB times the part of the pixel's plastic that is covered, and that part, four numbers a pixel. The same
 * over white and over black. Written over by the next one.
 */
export interface FlakeLayer {
  readonly rgba: Float32Array;
}

/** Of which side the flake is drawn. */
export interface FlakedSide {
  readonly bait: PicturedBait;
  readonly field: BaitField;
  /** What a line of sight runs through at a pixel, as it is met from this side. */
  runsAt(pixel: number): readonly Run[];
  readonly from: 'near' | 'far';
}

/** One kind of flake, placed and ready to be drawn. */
interface Kind {
  readonly flake: PicturedFlake;
  readonly outline: FlakeOutline;
  readonly placed: PlacedFlakes;
  readonly colours: FlakeColours;
  readonly shine: Shine;
}

/** Draws the flake of a side of a bait; undefined where it has none. */
export function flakeLayer({ bait, field, runsAt, from }: FlakedSide): FlakeLayer | undefined {
  if (bait.cups.every(({ flakes }) => flakes.length === 0)) return undefined;
  const thickestMm = thickestOf(field);
  if (thickestMm === 0) return undefined;
  const plastic = plasticOf(field);
  const kinds = bait.cups.flatMap(({ flakes }, cup) =>
    flakes.map((flake, index): Kind => {
      const outline = flakeOutline(flake);
      const colours = new FlakeColours(bait, flake.reflectance, thickestMm);
      const seed = `${bait.seed} flake ${cup} ${index}`;
      const placed = placedFlakes(
        { field, plastic },
        { cup, perMl: flake.perMl, longestMm: outline.longestMm, runsAt, far: from === 'far', seed },
      );
      return { flake, outline, placed, colours, shine: shineOf(flake.finish, colours.lightest(cup)) };
    }),
  );
  const rgba = zeroes('flake', 4 * field.cover.length);
  const stamp = new Stamp(field, rgba, from === 'far');
  const face = new Float64Array(FACE_AND_VEIL);
  for (const { kind, index } of deepestFirst(kinds, field.thicknessMm, thickestMm)) {
    const { flake, outline, placed, colours, shine } = kinds[kind]!;
    const pixel = placed.pixel[index]!;
    const mm = field.thicknessMm[pixel]!;
    colours.write(runsAt(pixel), placed.run[index]!, mm, placed.deep[index]!, face);
    const crowd = shine.crowd(flattestCosine(mm, outline.longestMm));
    stamp.add(outline, placed, index, { face, shine, crowd, opacity: 1 - flake.transmittance });
  }
  return { rgba };
}

/** Depths are told apart in so many steps: flakes of one step hide each other in the order in which they were placed. */
const LEVELS = 1024;

/** All flakes, those under most plastic first, so that the near ones lie over them. */
function* deepestFirst(
  kinds: readonly Kind[],
  thicknessMm: Float32Array,
  mostMm: number,
): Generator<{ readonly kind: number; readonly index: number }> {
  const total = kinds.reduce((sum, { placed }) => sum + placed.count, 0);
  const level = new Uint16Array(total);
  const ends = new Uint32Array(LEVELS + 1);
  const starts: number[] = [];
  let all = 0;
  for (const { placed } of kinds) {
    starts.push(all);
    for (let index = 0; index < placed.count; index++) {
      const depth = placed.deep[index]! * thicknessMm[placed.pixel[index]!]!;
      const own = LEVELS - 1 - Math.min(LEVELS - 1, Math.floor((depth / mostMm) * LEVELS));
      level[all++] = own;
      ends[own + 1]!++;
    }
  }
  for (let i = 0; i < LEVELS; i++) ends[i + 1]! += ends[i]!;
  const order = new Uint32Array(total);
  for (let i = 0; i < total; i++) order[ends[level[i]!]!++] = i;
  const found = { kind: 0, index: 0 };
  for (let i = 0; i < total; i++) {
    const flake = order[i]!;
    let kind = starts.length - 1;
    while (flake < starts[kind]!) kind--;
    found.kind = kind;
    found.index = flake - starts[kind]!;
    yield found;
  }
}
