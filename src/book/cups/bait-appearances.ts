/**
 * The book's views of a bait as it is believed to look: both its sides, its thin part, under other lights, and in water.
 *
 * @packageDocumentation
 */

import type { BelievedCup } from '../../learning/asked-views.ts';
import { adaptTristimulus } from '../../optics/adaptation.ts';
import { appearance, type ComputedColour, swirlAppearance } from '../../optics/appearance.ts';
import { type Lab, labFromTristimulus } from '../../optics/cielab.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import type { Viewing } from '../../optics/opacity.ts';
import { IN_WATER } from '../../optics/surface.ts';
import { type Tristimulus, whitePoint } from '../../optics/tristimulus.ts';
import { seenAtDepth, type WaterType } from '../../optics/water.ts';
import type { Face } from '../../patterns/pattern.ts';
import { PATTERNS } from '../../patterns/patterns.ts';
import { type Light, OTHER_LIGHTS } from '../../tables/lights.ts';
import { defined } from '../../values/defined.ts';
import type { BookEye } from '../learning/book-eye.ts';
import type { Appearance } from '../model/colours.ts';
import type { Recipe } from '../model/recipe.ts';
import { changeWords } from '../recipes/describe-change.ts';
import { faceLayers, keptAppearance } from './appearances.ts';
import { askedFace, type Bait } from './asked-bait.ts';
import { believedAppearance, believedFactors, factored, type ViewSpectra } from './believed-appearance.ts';

/** A bait as a whole: the side looked at, and the other where there is one. */
export function baitSides(bait: Bait, eye: BookEye): { readonly side: Appearance; readonly other?: Appearance } {
  const [near, far] = PATTERNS[bait.pattern].faces;
  const of = (face: Face): Appearance => believedAppearance(askedFace(bait, face, eye), eye);
  return { side: of(near), ...defined({ other: far && bait.cups.length > 1 ? of(far) : undefined }) };
}

/** The thin part of a bait that is as thick as that. */
export function thinAppearance(bait: Bait, eye: BookEye): Appearance {
  const { faces, thin } = PATTERNS[bait.pattern];
  const face: Face = thin === 'body' ? faces[0] : { name: faces[0].name, alone: thin.cup };
  return believedAppearance(askedFace(bait, face, eye), eye);
}

/** The side looked at, as a question to what is believed. */
export function askedSide(bait: Bait, eye: BookEye): BelievedCup {
  return askedFace(bait, PATTERNS[bait.pattern].faces[0], eye);
}

interface SideViews {
  readonly overWhite: ComputedColour;
  readonly overBlack: ComputedColour;
}

/** The side looked at, as the optics alone has it. */
function computedSide({ pattern, cups, thicknessMm, streakMm }: Bait, viewing: Viewing): SideViews {
  const [near] = PATTERNS[pattern].faces;
  if (!('mean' in near)) return appearance(faceLayers(pattern, near, cups, thicknessMm), viewing);
  const streaks = cups.map(({ body, share }) => ({ ...body, share }));
  return swirlAppearance(streaks, { thickness: thicknessMm, ...defined({ streak: streakMm }), ...viewing });
}

/** The side looked at as it is computed, and what it takes to make it look as it is believed to. */
function believedSide(bait: Bait, eye: BookEye): { readonly computed: SideViews; readonly factors: ViewSpectra } {
  const computed = computedSide(bait, { optics: eye.optics });
  const spectra = { overWhite: computed.overWhite.spectrum, overBlack: computed.overBlack.spectrum };
  return { computed, factors: believedFactors(spectra, eye.belief.mean(askedSide(bait, eye))) };
}

const contrastOf = ({ overWhite, overBlack }: SideViews): number =>
  overWhite.tristimulus.Y > 0 ? overBlack.tristimulus.Y / overWhite.tristimulus.Y : 1;

/**
 * The side looked at under other lights than daylight, and how far that is from daylight to an eye that has got used to the
 * light: colours are compared as the screen shows them, adapted to D65, over white or over black, where they differ more.
 */
export function baitUnderLights(bait: Bait, eye: BookEye): Recipe['lights'] {
  const { computed, factors } = believedSide(bait, eye);
  const under = (light?: Light): SideViews => ({
    overWhite: factored(computed.overWhite, factors.overWhite, light),
    overBlack: factored(computed.overBlack, factors.overBlack, light),
  });
  const daylight = under();
  const dayContrast = contrastOf(daylight);
  return OTHER_LIGHTS.map(({ light, name }) => {
    const side = under(light);
    const [white, black] = (['overWhite', 'overBlack'] as const).map((view) => {
      const [before, after] = [daylight[view].lab, usedTo(side[view].tristimulus, light)];
      return { before, after, deltaE: deltaE00(before, after) };
    });
    const { before, after, deltaE } = white!.deltaE >= black!.deltaE ? white! : black!;
    const words = changeWords(before, after, contrastOf(side) - dayContrast);
    const body = keptAppearance({ ...side, contrastRatio: contrastOf(side) });
    return { light, name, body, deltaE: Number(deltaE.toFixed(2)), words };
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
export function baitInWater(bait: Bait, eye: BookEye): Recipe['water'] {
  const { factors } = believedSide(bait, eye);
  const { overBlack: wet } = computedSide(bait, { surface: IN_WATER, optics: eye.optics });
  const overBlack = factored(wet, factors.overBlack);
  return WATERS_SHOWN.flatMap(({ type, name }) =>
    DEPTHS_M.map((depthM) => {
      const { hex, lightLeft } = seenAtDepth(overBlack.spectrum, type, depthM);
      return { water: name, type, depthM, hex, lightLeft: Number(lightLeft.toFixed(4)) };
    }),
  );
}
