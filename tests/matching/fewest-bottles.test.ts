import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seededRandom } from '../../src/cup/random.ts';
import type { MatchMaterial } from '../../src/matching/shelf/match-material.ts';
import type { TargetPart } from '../../src/matching/target/target-part.ts';
import { bodyViews, type TwoViews } from '../../src/optics/cup-body.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { BAND_COUNT } from '../../src/optics/spectrum.ts';
import { firstRecipe } from './plain-questions.ts';
import { CLEAR, EXACT_BENCH, SHELF } from './sample-shelf.ts';

const TOLERANCE = 2;
const MM = 6;
const FEW = ['brown-dye', 'green-dye', 'blue-dye', 'amber-dye', 'black', 'white-pearl'].map(
  (id) => SHELF.find((material) => material.id === id)!,
);

/** What a cup looks like, added up band by band: nothing of the search, and nothing of its model of a cup. */
function looks(doses: readonly (readonly [MatchMaterial, number])[]): TwoViews {
  const absorption = Float64Array.from(CLEAR.constants!.absorption);
  const scattering = Float64Array.from(CLEAR.constants!.scattering);
  for (const [{ constants }, dose] of doses)
    for (let band = 0; band < BAND_COUNT; band++) {
      absorption[band]! += dose * constants!.absorption[band]!;
      scattering[band]! += dose * constants!.scattering[band]!;
    }
  return bodyViews({ absorption, scattering }, MM, USUAL_OPTICS);
}

const away = (views: TwoViews, target: TargetPart): number =>
  Math.max(deltaE00(target.overWhite, views.overWhite), deltaE00(target.overBlack!, views.overBlack));

/** Doses from a hundredth of the typical one on, each a quarter more: as much as `check` takes without a word. */
const ladder = ({ kind, typical = 0.01, density }: MatchMaterial): readonly number[] => {
  const most = kind === 'powder' ? 0.02 * CLEAR.density : 0.03 * density;
  const doses: number[] = [];
  for (let dose = typical / 100; dose <= most; dose *= 1.25) doses.push(dose);
  return doses;
};

/** The nearest that any one bottle, or any two, come to a target: every dose of every set is tried. */
function nearestOf(target: TargetPart, bottles: 1 | 2): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const [index, one] of FEW.entries())
    for (const dose of ladder(one)) {
      if (bottles === 1) nearest = Math.min(nearest, away(looks([[one, dose]]), target));
      else
        for (const other of FEW.slice(index + 1))
          for (const more of ladder(other)) {
            const liquid = [one, other].every(({ kind }) => kind === 'colorant') ? dose + more : 0;
            if (liquid <= 0.03)
              nearest = Math.min(
                nearest,
                away(
                  looks([
                    [one, dose],
                    [other, more],
                  ]),
                  target,
                ),
              );
          }
    }
  return nearest;
}

/** A cup of one to three of the bottles, and what it looks like to an eye that errs. */
const targets = fc.nat(1e6).map((seed): TargetPart => {
  const random = seededRandom(seed);
  const picked = [...FEW].sort(() => random() - 0.5).slice(0, 1 + Math.floor(random() * 3));
  const { overWhite, overBlack } = looks(picked.map((each) => [each, each.typical! * (0.1 + random())]));
  const moved = { L: overWhite.L, a: overWhite.a + random() - 0.5, b: overWhite.b + random() - 0.5 };
  return { name: 'body', overWhite: moved, overBlack, thicknessMm: MM };
});

const ask = (target: TargetPart, shelf: readonly MatchMaterial[]): ReturnType<typeof firstRecipe> =>
  firstRecipe({
    optics: USUAL_OPTICS,
    parts: [target],
    plastic: 'clear',
    plasticMl: 120,
    shelf: [...shelf, CLEAR],
    bench: EXACT_BENCH,
    tolerance: TOLERANCE,
  });

test('firstRecipe(…) never takes more bottles than all doses of all sets of one and of two show to be enough', () => {
  fc.assert(
    fc.property(targets, (target) => {
      const { advice, proposals } = ask(target, FEW);
      if (advice.kind !== 'make') return;
      const [best] = proposals;
      // What the ladder's steps, and what drops scatter, leave open is not asked for.
      const sure = 0.6 * TOLERANCE;
      if (best!.bottles > 1) expect(nearestOf(target, 1)).toBeGreaterThan(sure);
      if (best!.bottles > 2) expect(nearestOf(target, 2)).toBeGreaterThan(sure);
    }),
    { numRuns: 12 },
  );
});

test('firstRecipe(…) is the same however the shelf stands', () => {
  fc.assert(
    fc.property(targets, fc.shuffledSubarray(FEW, { minLength: FEW.length }), (target, shuffled) => {
      expect(ask(target, shuffled)).toEqual(ask(target, FEW));
    }),
    { numRuns: 15 },
  );
});
