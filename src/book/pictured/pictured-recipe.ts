import { appearance, swirlAppearance } from '../../optics/appearance.ts';
import { type Lab, labOf } from '../../optics/cielab.ts';
import { colourFactor } from '../../optics/colour-factor.ts';
import { cupBody } from '../../optics/cup-body.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import type { Spectrum } from '../../optics/spectrum.ts';
import type { Body } from '../../optics/stack.ts';
import type { Face } from '../../patterns/pattern.ts';
import { hasTwoSides, PATTERNS } from '../../patterns/patterns.ts';
import type {
  PicturedBait,
  PicturedCup,
  PicturedFlake,
  PicturedSide,
  TaughtFactors,
} from '../../picture/pictured-bait.ts';
import { STREAK_THICKNESS } from '../../tables/patterns.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { faceLayers } from '../cups/appearances.ts';
import type { Appearance } from '../model/colours.ts';
import type { Cup } from '../model/cup.ts';
import type { Recipe } from '../model/recipe.ts';
import type { Material } from '../model/shelf.ts';
import type { Book } from '../model.ts';

/** Nearer than this a computed colour is the one that is believed: ΔE00, more than rounding. */
const SAME = 0.05;

/** What a recipe is pictured from: its cups by the shelf and the optics of the book, and what looks have taught of its bait. */
export function picturedRecipe(
  recipe: Recipe,
  { materials, molds, optics }: Pick<Book, 'materials' | 'molds' | 'optics'>,
): PicturedBait {
  const { pattern, between } = recipe;
  const { shape, lengthMm, bodyMm, thinMm, cavityMl } = required(molds, recipe.mold);
  const shelf = (id: string): Material => required(materials, id);
  const bodies = recipe.cups.map((cup): Body => {
    const { absorption, scattering } = cupBody(cup, shelf, optics);
    return { absorption, scattering };
  });
  const shares = recipe.cups.map(({ share }) => share);
  const { faces, thin, beside } = PATTERNS[pattern];
  const [near, far] = faces;
  const shared = bodies.map((body, cup) => ({ body, share: shares[cup]! }));
  const faceSpectra = (face: Face, mm: number): readonly Spectrum[] => {
    const { overWhite, overBlack } =
      'mean' in face
        ? swirlAppearance(
            shared.map(({ body, share }) => ({ ...body, share })),
            { thickness: mm, optics, ...defined({ streak: recipe.streakMm }) },
          )
        : appearance(faceLayers(pattern, face, shared, mm), { optics });
    return [overWhite.spectrum, overBlack.spectrum];
  };
  /** What looks have taught of a face at a thickness; nothing where it is believed to look as it is computed. */
  const taughtOf = (face: Face, mm: number, believed: Appearance | undefined): readonly TaughtFactors[] => {
    if (believed === undefined) return [];
    const views: readonly Lab[] = [believed.overWhite.lab, believed.overBlack.lab];
    const spectra = faceSpectra(face, mm);
    if (spectra.every((spectrum, view) => deltaE00(labOf(spectrum), views[view]!) < SAME)) return [];
    const [overWhite, overBlack] = spectra.map((spectrum, view) => Array.from(colourFactor(spectrum, views[view]!)));
    return [{ mm, overWhite: overWhite!, overBlack: overBlack! }];
  };
  const ofThin = taughtOf(thin === 'body' ? near : { name: near.name, alone: thin.cup }, thinMm, between.thin);
  const ofBody = taughtOf(near, bodyMm, between.body);
  const cups = shares.map((share, cup) => ({ cup, share }));
  const side: PicturedSide = {
    pattern,
    cups,
    from: 'near',
    ...(thin === 'body' || beside ? {} : { thinCup: thin.cup }),
    taught:
      thin === 'body'
        ? [[...ofThin, ...ofBody]]
        : beside
          ? cups.map(({ cup }) => [
              ...(cup === thin.cup ? ofThin : []),
              ...(cup === 0 ? ofBody : taughtOf(far ?? near, bodyMm, between.other)),
            ])
          : [ofBody, ofThin],
  };
  return {
    seed: recipe.id,
    mold: { shape, bodyMm, thinMm, cavityMl, ...defined({ lengthMm }) },
    optics: { backings: optics.backings, path: optics.path },
    cups: recipe.cups.map(
      (cup, index): PicturedCup => ({
        absorption: Array.from(bodies[index]!.absorption),
        scattering: Array.from(bodies[index]!.scattering),
        flakes: cup.flakes.map((flake) => picturedFlake(flake, shelf(flake.material))),
        pearl: pearlPart(cup, bodies[index]!, shelf),
      }),
    ),
    streakMm: recipe.streakMm ?? STREAK_THICKNESS,
    near: side,
    ...defined({
      far:
        hasTwoSides(pattern) && far !== undefined
          ? { ...side, from: 'far' as const, taught: [taughtOf(far, bodyMm, between.other), ...side.taught.slice(1)] }
          : undefined,
    }),
  };
}

/** What part of a cup's scattering is by plates of pearl. */
function pearlPart({ contents }: Pick<Cup, 'contents'>, body: Body, shelf: (id: string) => Material): number {
  const sum = (bands: ArrayLike<number>): number => Array.from(bands).reduce((all, each) => all + each, 0);
  const pearls = contents.map(({ material, gramsPerMl }) => {
    const { pearl, constants } = shelf(material);
    return pearl && constants ? gramsPerMl * sum(constants.scattering) : 0;
  });
  return Math.min(1, sum(pearls) / sum(body.scattering));
}

function picturedFlake({ material, flakesPerMl }: Cup['flakes'][number], { flake }: Material): PicturedFlake {
  if (flake === undefined) throw new RangeError(`${material} is no flake; ask only for flake`);
  const { outline, acrossMm, longMm, finish, reflectance, transmittance } = flake;
  return { outline, acrossMm, ...defined({ longMm }), finish, reflectance, transmittance, perMl: flakesPerMl };
}
