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
import type { OpticalModel } from '../../optics/optical-model.ts';
import type { Body, Layer, SharedBody } from '../../optics/stack.ts';
import { IN_WATER } from '../../optics/surface.ts';
import { type Tristimulus, whitePoint } from '../../optics/tristimulus.ts';
import { seenAtDepth, type WaterType } from '../../optics/water.ts';
import type { Face } from '../../patterns/pattern.ts';
import { faceRuns, PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import { type Light, OTHER_LIGHTS } from '../../tables/lights.ts';
import { defined } from '../../values/defined.ts';
import type { Appearance, Colour } from '../model/colours.ts';
import type { Recipe } from '../model/recipe.ts';
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

/** A body of a thickness in mm over both backings. */
export function appearanceOf(body: Body, thickness: number, optics: OpticalModel): Appearance {
  return keptAppearance(appearance([{ ...body, thickness }], { optics }));
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
  optics: OpticalModel,
): { readonly side: Appearance; readonly other?: Appearance } {
  const [near, far] = PATTERNS[pattern].faces;
  const of = (face: Face): Appearance => keptAppearance(faceAppearance(pattern, face, cups, thickness, { optics }));
  const other = far && cups.length > 1 ? of(far) : undefined;
  return { side: of(near), ...defined({ other }) };
}

/** The thin part of a bait. */
export function thinAppearance(
  pattern: Pattern,
  cups: readonly SharedCup[],
  thickness: number,
  optics: OpticalModel,
): Appearance {
  const { faces, thin } = PATTERNS[pattern];
  const face: Face = thin === 'body' ? faces[0] : { name: faces[0].name, alone: thin.cup };
  return keptAppearance(faceAppearance(pattern, face, cups, thickness, { optics }));
}

/** Lab of the side looked at. No hex, no other side and no body without its flake is found for it: nobody would read them. */
export function baitViews(
  pattern: Pattern,
  cups: readonly SharedCup[],
  thickness: number,
  optics: OpticalModel,
): TwoViews {
  const [near] = PATTERNS[pattern].faces;
  return 'mean' in near
    ? swirlViews(sharedBodies(cups), thickness, optics)
    : layersViews(faceLayers(pattern, near, cups, thickness), optics);
}

const sharedBodies = (cups: readonly SharedCup[]): readonly SharedBody[] =>
  cups.map(({ body, share }) => ({ ...body, share }));

/**
 * What of a bait is seen by itself, over white and black, the side looked at first: of cups beside one another each, else
 * its sides as they are in the bait.
 */
export function baitFaces(
  pattern: Pattern,
  cups: readonly SharedCup[],
  thickness: number,
  optics: OpticalModel,
): readonly TwoViews[] {
  const { faces, beside } = PATTERNS[pattern];
  if (beside) return cups.map(({ body }) => layersViews([{ ...body, thickness }], optics));
  return faces
    .filter((face) => face !== undefined && 'from' in face)
    .map((face) => layersViews(faceLayers(pattern, face, cups, thickness), optics));
}

/** What an eye looks through at a face: layers of a bait of a thickness in mm, the near one first. */
function faceLayers(pattern: Pattern, face: Face, cups: readonly SharedCup[], thickness: number): readonly Layer[] {
  const shares = cups.map(({ share }) => share);
  return faceRuns(pattern, face, shares).map(({ cup, part }) => {
    const shared = cups[cup];
    if (shared === undefined) throw new RangeError(`a bait of ${cups.length} cups has none at ${cup}; give it one`);
    return { ...shared.body, thickness: part * thickness };
  });
}

type Side = Pick<ComputedAppearance, 'overWhite' | 'overBlack' | 'contrastRatio'>;

function faceAppearance(
  pattern: Pattern,
  face: Face,
  cups: readonly SharedCup[],
  thickness: number,
  viewing: Viewing,
): Side {
  if (!('mean' in face)) return appearance(faceLayers(pattern, face, cups, thickness), viewing);
  return swirlAppearance(sharedBodies(cups), { thickness, ...viewing });
}

/** The side looked at. */
function sideAppearance(pattern: Pattern, cups: readonly SharedCup[], thickness: number, viewing: Viewing): Side {
  return faceAppearance(pattern, PATTERNS[pattern].faces[0], cups, thickness, viewing);
}

/**
 * The side looked at under other lights than daylight, and how far that is from daylight to an eye that has got used to the
 * light: colours are compared as the screen shows them, adapted to D65, over white or over black, where they differ more.
 */
export function baitUnderLights(
  pattern: Pattern,
  cups: readonly SharedCup[],
  thickness: number,
  optics: OpticalModel,
): Recipe['lights'] {
  const daylight = sideAppearance(pattern, cups, thickness, { optics });
  return OTHER_LIGHTS.map(({ light, name }) => {
    const side = sideAppearance(pattern, cups, thickness, { light, optics });
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
export function baitInWater(
  pattern: Pattern,
  cups: readonly SharedCup[],
  thickness: number,
  optics: OpticalModel,
): Recipe['water'] {
  const { overBlack } = sideAppearance(pattern, cups, thickness, { surface: IN_WATER, optics });
  return WATERS_SHOWN.flatMap(({ type, name }) =>
    DEPTHS_M.map((depthM) => {
      const { hex, lightLeft } = seenAtDepth(overBlack.spectrum, type, depthM);
      return { water: name, type, depthM, hex, lightLeft: round(lightLeft, 4) };
    }),
  );
}
