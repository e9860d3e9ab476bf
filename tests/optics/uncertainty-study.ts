/**
 * How far colours are from their predictions where the truth is known, and how often the stated bounds hold.
 *
 * Photographed and estimated: 19 paints of published K and S stand for a shelf (see `paints.ts`). Measured: films of real
 * paints, each mix left out of the fit in turn (see `fit/pigment-films.ts`).
 */

import { seededRandom, standardNormal } from '../../src/cup/random.ts';
import type { Lab } from '../../src/optics/cielab.ts';
import { doubtfulConstants, tierDoubt } from '../../src/optics/constants-doubt.ts';
import { bodyViews, type TwoViews, viewsDifference } from '../../src/optics/cup-body.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { hexFromLab, hexOf } from '../../src/optics/display.ts';
import { isOpticalFault } from '../../src/optics/fault.ts';
import { materialDoubt } from '../../src/optics/fit/material-doubt.ts';
import { predictFilm } from '../../src/optics/fit/predict-film.ts';
import { fromChips } from '../../src/optics/from-chips.ts';
import { fromColourAndKind } from '../../src/optics/from-colour-and-kind.ts';
import { reflectancesInfinite } from '../../src/optics/kubelka-munk.ts';
import type { MaterialConstants } from '../../src/optics/material-constants.ts';
import { mixtureConstants, type OpticalConstants } from '../../src/optics/mixture.ts';
import { NO_PATH, USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { plasticConstants } from '../../src/optics/plastic.ts';
import { BESIDE_GLOSS, surfaceOutwardSpectrum } from '../../src/optics/surface.ts';
import { viewsSpread } from '../../src/optics/views-spread.ts';
import { type FilmLeftOut, labOnGrid } from './fit/pigment-films.ts';
import { look, paints, pairs } from './paints.ts';

/** A prediction beside the truth, in ΔE00. */
export interface Judged {
  readonly error: number;
  readonly median: number;
  readonly bound90: number;
}

/** What the shelf knows of its materials. */
export type Knowledge = 'one chip' | 'two chips' | 'colour and kind';

const plastic = plasticConstants('clear');

/** Standard deviation of a camera's L, a and b. Common practice, no source. */
const CAMERA_NOISE = 1;

/** Every pair of the paints at three ratios, predicted from what is known of them. */
export function judgedPairs(knowledge: Knowledge): Judged[] {
  const random = seededRandom(7);
  const truth = paints();
  const found = truth.map(({ name, constants }) => known(knowledge, name, constants, random));
  const doubts = found.map(({ tier, residual }) => tierDoubt(tier as 'photographed' | 'estimated', residual));
  return pairs(truth.length).map((mix) => {
    const views = (constants: (part: number) => OpticalConstants): TwoViews =>
      bodyViews(
        mixtureConstants(
          plastic,
          mix.map(({ dose }, part) => ({ constants: constants(part), concentration: dose })),
        ),
        8,
        USUAL_OPTICS,
      );
    const predicted = views((part) => found[mix[part]!.of]!.constants);
    const moved = mix.flatMap(({ of }, changed) =>
      doubtfulConstants(found[of]!.constants, doubts[of]!).map(({ up, down }) => {
        const at = (constants: OpticalConstants): TwoViews =>
          views((part) => (part === changed ? constants : found[mix[part]!.of]!.constants));
        return { up: at(up), down: at(down) };
      }),
    );
    const { median, bound90 } = viewsSpread(predicted, moved);
    const right = views((part) => truth[mix[part]!.of]!.constants);
    return { error: viewsDifference(predicted, right), median, bound90 };
  });
}

function known(
  knowledge: Knowledge,
  name: string,
  constants: OpticalConstants,
  random: () => number,
): MaterialConstants {
  if (knowledge === 'colour and kind') {
    const { absorption, scattering } = constants;
    const colour = hexOf(surfaceOutwardSpectrum(reflectancesInfinite(absorption, scattering), BESIDE_GLOSS)).hex;
    const result = fromColourAndKind({
      // Published as they are where all is hidden: K is K′ there.
      optics: { ...USUAL_OPTICS, path: NO_PATH },
      colour,
      kind: /white/i.test(name) ? 'white' : 'pigment',
      dose: 1,
    });
    if (isOpticalFault(result)) throw new Error(result.message);
    return result;
  }
  const photographed = ({ L, a, b }: Lab): string => {
    const noise = (): number => CAMERA_NOISE * standardNormal(random);
    return hexFromLab({ L: Math.max(0, L + noise()), a: a + noise(), b: b + noise() }).hex;
  };
  for (;;) {
    const chips = (knowledge === 'one chip' ? [0.2] : [0.05, 0.5]).map((concentration) => {
      const { overWhite, overBlack } = look([{ constants, concentration }], 3);
      return {
        concentration,
        thickness: 3,
        overWhite: photographed(overWhite.lab),
        overBlack: photographed(overBlack.lab),
      };
    });
    const result = fromChips({ optics: USUAL_OPTICS, plastic, chips });
    // A maker who is told that a chip can't be takes its photo again.
    if (!isOpticalFault(result)) return result;
  }
}

/** Each film, predicted by the fit of all others with the doubt of each paint by itself. */
export function judgedFilms(left: readonly FilmLeftOut[]): Judged[] {
  return left.flatMap(({ film, fitOthers }) => {
    const fitted = fitOthers();
    const { wavelengths } = fitted.options;
    return film.views.map(({ backing, seen }) => {
      const both = (lab: Lab): TwoViews => ({ overWhite: lab, overBlack: lab });
      const { lab } = predictFilm(fitted, film.parts, backing);
      const moved = film.parts.flatMap(({ material }) => {
        const now = fitted.materials.get(material)!;
        return doubtfulConstants(now, materialDoubt(fitted, material)).map(({ up, down }) => {
          const at = (constants: OpticalConstants): TwoViews => {
            const materials = new Map(fitted.materials).set(material, {
              ...now,
              absorption: Float64Array.from(constants.absorption),
              scattering: Float64Array.from(constants.scattering),
            });
            return both(predictFilm({ ...fitted, materials }, film.parts, backing).lab);
          };
          return { up: at(up), down: at(down) };
        });
      });
      const { median, bound90 } = viewsSpread(both(lab), moved);
      return { error: deltaE00(lab, labOnGrid(seen, wavelengths)), median, bound90 };
    });
  });
}

/** Share of predictions that are within a bound of theirs, 0..1. */
export function shareWithin(judged: readonly Judged[], bound: 'median' | 'bound90'): number {
  return judged.filter((each) => each.error <= each[bound]).length / judged.length;
}
