/**
 * The book's views of cups and baits: the optics' results as plain values of the model.
 *
 * @packageDocumentation
 */

import { appearance, type ComputedAppearance } from '../../optics/appearance.ts';
import { layersViews, swirlViews, type TwoViews } from '../../optics/cup-body.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import type { Body, Layer, SharedBody } from '../../optics/stack.ts';
import type { Face } from '../../patterns/pattern.ts';
import { faceRuns, PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import type { Appearance, Colour } from '../model/colours.ts';

// Nor is a colour kept as −0, which JSON does not know.
const round = (value: number, places: number): number => Number(value.toFixed(places)) + 0;

/** A colour of the optics as the book keeps it: Lab to a hundredth. */
export function keptColour({ lab, hex, mapped }: Colour): Colour {
  return { lab: { L: round(lab.L, 2), a: round(lab.a, 2), b: round(lab.b, 2) }, hex, mapped };
}

type KeptViews = Pick<ComputedAppearance, 'contrastRatio'> & { readonly overWhite: Colour; readonly overBlack: Colour };

/** An appearance as the book keeps it. */
export function keptAppearance({ overWhite, overBlack, contrastRatio }: KeptViews): Appearance {
  return { overWhite: keptColour(overWhite), overBlack: keptColour(overBlack), contrastRatio: round(contrastRatio, 4) };
}

/** A body of a thickness in mm over both backings. */
export function appearanceOf(body: Body, thickness: number, optics: OpticalModel): Appearance {
  return keptAppearance(appearance([{ ...body, thickness }], { optics }));
}

/** A cup's body and its share of the bait. */
export interface SharedCup {
  readonly body: Body;
  readonly share: number;
}

/** Lab of the side looked at. No hex, no other side and no body without its flake is found for it: nobody would read them. */
export function baitViews(
  pattern: Pattern,
  cups: readonly SharedCup[],
  thickness: number,
  optics: OpticalModel,
  streakMm?: number,
): TwoViews {
  const [near] = PATTERNS[pattern].faces;
  return 'mean' in near
    ? swirlViews(sharedBodies(cups), thickness, optics, streakMm)
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
export function faceLayers(
  pattern: Pattern,
  face: Face,
  cups: readonly SharedCup[],
  thickness: number,
): readonly Layer[] {
  const shares = cups.map(({ share }) => share);
  return faceRuns(pattern, face, shares).map(({ cup, part }) => {
    const shared = cups[cup];
    if (shared === undefined) throw new RangeError(`a bait of ${cups.length} cups has none at ${cup}; give it one`);
    return { ...shared.body, thickness: part * thickness };
  });
}
