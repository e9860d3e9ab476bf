/**
 * The book's views of cups and baits: the optics' results as plain values of the model.
 *
 * @packageDocumentation
 */

import { adaptTristimulus } from '../../optics/adaptation.ts';
import { appearance, type ComputedAppearance, swirlAppearance } from '../../optics/appearance.ts';
import { type Lab, labFromTristimulus } from '../../optics/cielab.ts';
import { layersViews, swirlViews, type TwoViews } from '../../optics/cup-body.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import type { Viewing } from '../../optics/opacity.ts';
import { type Body, coreLayers, type Layer, layersByShare, type SharedBody } from '../../optics/stack.ts';
import { IN_WATER } from '../../optics/surface.ts';
import { type Tristimulus, whitePoint } from '../../optics/tristimulus.ts';
import { seenAtDepth, type WaterType } from '../../optics/water.ts';
import type { Light } from '../../tables/lights.ts';
import { SIDE_BY_SIDE } from '../../tables/patterns.ts';
import { defined } from '../../values/defined.ts';
import type { Appearance, Colour, Pattern, Recipe } from '../model.ts';
import { changeWords } from '../recipes/describe-change.ts';

const round = (value: number, places: number): number => Number(value.toFixed(places));

/** A colour of the optics as the book keeps it: Lab to a hundredth. */
export function keptColour({ lab, hex, mapped }: Colour): Colour {
  return { lab: { L: round(lab.L, 2), a: round(lab.a, 2), b: round(lab.b, 2) }, hex, mapped };
}

/** An appearance as the book keeps it. */
export function keptAppearance({
  overWhite,
  overBlack,
  contrastRatio,
}: Pick<ComputedAppearance, 'overWhite' | 'overBlack' | 'contrastRatio'>): Appearance {
  return { overWhite: keptColour(overWhite), overBlack: keptColour(overBlack), contrastRatio: round(contrastRatio, 4) };
}

/** A body of a thickness in mm over the book's backings. */
export function appearanceOf(body: Body, thickness: number): Appearance {
  return keptAppearance(appearance([{ ...body, thickness }]));
}

/** The plastic of a cup without its flake. */
export function withoutFlake({ absorption, scattering }: Body): Body {
  return { absorption, scattering };
}

/** A cup's body and its share of the bait. */
export interface SharedCup {
  readonly body: Body;
  readonly share: number;
}

/** A bait as a whole at one thickness: the side looked at, and the other where there is one. */
export function baitSides(
  pattern: Pattern,
  cups: readonly SharedCup[],
  thickness: number,
): { readonly side: Appearance; readonly other?: Appearance } {
  const { side, other } = baitAppearances(pattern, cups, thickness);
  return { side: keptAppearance(side), ...(other === undefined ? {} : { other: keptAppearance(other) }) };
}

/** Lab of the side looked at. No hex, no other side and no body without its flake is found for it: nobody would read them. */
export function baitViews(pattern: Pattern, cups: readonly SharedCup[], thickness: number): TwoViews {
  if (pattern !== 'swirl') {
    const [side] = sidesOf(pattern, sharedBodies(cups), thickness);
    if (side === undefined) throw new RangeError('a bait has no cup; give it one');
    return layersViews(side);
  }
  return swirlViews(sharedBodies(cups), thickness);
}

/** What of a bait is seen by itself, over the book's white and black: see `sidesOf`. */
export function baitFaces(pattern: Pattern, cups: readonly SharedCup[], thickness: number): readonly TwoViews[] {
  return sidesOf(pattern, sharedBodies(cups), thickness).map((layers) => layersViews(layers));
}

const sharedBodies = (cups: readonly SharedCup[]): readonly SharedBody[] =>
  cups.map(({ body, share }) => ({ ...body, share }));

/**
 * The layers of each side of a bait that is seen by itself, the side looked at first: of cups over one another that and the other side,
 * of a core its shell, of cups beside one another each.
 */
function sidesOf(pattern: Pattern, cups: readonly SharedBody[], thickness: number): readonly (readonly Layer[])[] {
  const [first, second] = cups;
  if (SIDE_BY_SIDE.has(pattern) || first === undefined || second === undefined) {
    return cups.map((body) => [{ ...body, thickness }]);
  }
  if (pattern === 'core') return [coreLayers(first, second, thickness)];
  return [layersByShare(cups, thickness), layersByShare(cups.toReversed(), thickness)];
}

type Side = Pick<ComputedAppearance, 'overWhite' | 'overBlack' | 'contrastRatio'>;

function baitAppearances(
  pattern: Pattern,
  cups: readonly SharedCup[],
  thickness: number,
  viewing: Viewing = {},
): { readonly side: Side; readonly other?: Side } {
  const shared = sharedBodies(cups);
  if (pattern === 'swirl') return { side: swirlAppearance(shared, { thickness, ...viewing }) };
  const [side, far] = sidesOf(pattern, shared, thickness).map((layers) => appearance(layers, viewing));
  if (side === undefined) throw new RangeError('a bait has no cup; give it one');
  const [, core] = pattern === 'core' ? shared : [];
  const other = core === undefined ? far : appearance(core, { thickness, ...viewing });
  return { side, ...defined({ other }) };
}

/** Lights of shops and evenings, beside the daylight of all other colours. */
export const OTHER_LIGHTS: readonly { readonly light: Light; readonly name: string }[] = [
  { light: 'A', name: 'lamp' },
  { light: 'LED-B1', name: 'warm LED' },
  { light: 'F11', name: 'fluorescent tube' },
];

/**
 * The side looked at under other lights than daylight, and how far that is from daylight to an eye that has got used to the
 * light: colours are compared as the screen shows them, adapted to D65, over white or over black, where they differ more.
 */
export function baitUnderLights(pattern: Pattern, cups: readonly SharedCup[], thickness: number): Recipe['lights'] {
  const daylight = baitAppearances(pattern, cups, thickness).side;
  return OTHER_LIGHTS.map(({ light, name }) => {
    const { side } = baitAppearances(pattern, cups, thickness, { light });
    const [white, black] = (['overWhite', 'overBlack'] as const).map((view) => {
      const [before, after] = [daylight[view].lab, usedTo(side[view].tristimulus, light)];
      return { before, after, deltaE: deltaE00(before, after) };
    });
    const { before, after, deltaE } = white!.deltaE >= black!.deltaE ? white! : black!;
    const words = changeWords(before, after, side.contrastRatio - daylight.contrastRatio);
    return { light, name, body: keptAppearance(side), deltaE: round(deltaE, 2), words };
  });
}

/** A colour under a light as an eye that has got used to the light would name it in daylight. */
function usedTo(colour: Tristimulus, light: Light): Lab {
  const white = whitePoint('D65');
  return labFromTristimulus(adaptTristimulus(colour, whitePoint(light), white), white);
}

/** Waters and depths that the book shows: open sea, a green coast, a turbid one, and a lake that peat has stained. */
export const WATERS_SHOWN: readonly { readonly type: WaterType; readonly name: string }[] = [
  { type: 'IB', name: 'clear' },
  { type: '5C', name: 'green' },
  { type: '9C', name: 'turbid' },
  { type: 'stained', name: 'stained' },
];
const DEPTHS_M = [1, 3, 6];

/** The side looked at, at depth: lit from above, against the dark of the water, looked at from close by. */
export function baitInWater(pattern: Pattern, cups: readonly SharedCup[], thickness: number): Recipe['water'] {
  const { overBlack } = baitAppearances(pattern, cups, thickness, { surface: IN_WATER }).side;
  return WATERS_SHOWN.flatMap(({ type, name }) =>
    DEPTHS_M.map((depthM) => {
      const { hex, lightLeft } = seenAtDepth(overBlack.spectrum, type, depthM);
      return { water: name, type, depthM, hex, lightLeft: round(lightLeft, 4) };
    }),
  );
}
