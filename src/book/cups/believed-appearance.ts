/**
 * What a cup or a bait looks like as the book believes it: computed, and moved to what was seen of it and of its like.
 *
 * @packageDocumentation
 */
import type { BelievedCup } from '../../learning/asked-views.ts';
import { type ComputedColour, colourOf } from '../../optics/appearance.ts';
import { tristimulusFromLab } from '../../optics/cielab.ts';
import { colourFactor } from '../../optics/colour-factor.ts';
import type { TwoViews } from '../../optics/cup-body.ts';
import { hexFromLab } from '../../optics/display.ts';
import { mapSpectrum, type Spectrum } from '../../optics/spectrum.ts';
import type { Light } from '../../tables/lights.ts';
import type { BookEye } from '../learning/book-eye.ts';
import type { Appearance, Colour } from '../model/colours.ts';
import { keptAppearance } from './appearances.ts';

/** By daylight, over white and over black. */
export function believedAppearance(asked: BelievedCup, { belief }: BookEye): Appearance {
  return appearanceOfViews(belief.mean(asked));
}

/** Two colours as an appearance of the book. */
export function appearanceOfViews({ overWhite, overBlack }: TwoViews): Appearance {
  const [white, black] = [tristimulusFromLab(overWhite).Y, tristimulusFromLab(overBlack).Y];
  const contrastRatio = white > 0 ? Math.min(1, black / white) : 1;
  return keptAppearance({ overWhite: colourOfLab(overWhite), overBlack: colourOfLab(overBlack), contrastRatio });
}

const colourOfLab = (lab: TwoViews['overWhite']): Colour => ({ lab, ...hexFromLab(lab) });

/** Spectra over white and over black. */
export interface ViewSpectra {
  readonly overWhite: Spectrum;
  readonly overBlack: Spectrum;
}

/**
 * How a thing's spectra differ from the computed ones, given what it is believed to look like by daylight: for each view the smooth
 * factor that makes the one colour the other (`colourFactor`). The same factors hold for every view of the thing of which no daylight
 * was ever seen: under other lights, and in water. So all of them are of one thing, and by daylight they are exactly what is believed.
 */
export function believedFactors(computed: ViewSpectra, believed: TwoViews): ViewSpectra {
  return {
    overWhite: colourFactor(computed.overWhite, believed.overWhite),
    overBlack: colourFactor(computed.overBlack, believed.overBlack),
  };
}

/** A computed spectrum times a factor, under a light. */
export function factored({ spectrum }: ComputedColour, factor: Spectrum, light?: Light): ComputedColour {
  return colourOf(
    mapSpectrum(spectrum, (R, band) => R * factor[band]!),
    light,
  );
}
