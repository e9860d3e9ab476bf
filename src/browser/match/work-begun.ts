/**
 * A match as it is begun, with a target or with a recipe, and goes on with what is proposed.
 *
 * @packageDocumentation
 */
import type { Proposal } from '../../matching/proposals/proposal.ts';
import type { RecipeAmount, RecipeProposal } from '../../matching/proposals/recipe-proposal.ts';
import type { WantedFlake } from '../../matching/substitutes/flake-match.ts';
import type { MatchPageData } from '../../render/pages/match.ts';
import { required } from '../../values/required.ts';
import { bookAmount, fileDose } from './dose-text.ts';
import { within } from './limits.ts';
import type { WorkFlake } from './side-flake.ts';
import { begunAnew, type Work, type WorkAmount, type WorkSide, type WorkStep } from './work.ts';
import { bookColour } from './work-colour.ts';

/** A new match: a target that is to be described. */
export function newWork(data: MatchPageData): Work {
  const mold = data.molds[0]!;
  return withTarget(
    {
      format: 1,
      title: '',
      arrangement: 'solid',
      sides: [],
      tolerance: within('tolerance', data.settings.tolerance),
      mold: mold.id,
      plastic: data.plastic,
      plasticMl: data.plasticMl,
      without: [],
      inStock: false,
      cups: [],
    },
    [{ name: 'body', thicknessMm: within('thicknessMm', mold.bodyMm) }],
  );
}

/** A new match with the mold, the plastic and the shelf of the one before: they seldom change. */
export function withCupOf(work: Work, { mold, plastic, plasticMl, tolerance, without, inStock, sides }: Work): Work {
  const thicknessMm = sides[0]!.thicknessMm;
  const same = { mold, plastic, plasticMl, tolerance, without, inStock };
  return { ...work, ...same, sides: work.sides.map((side) => ({ ...side, thicknessMm })) };
}

function withTarget(work: Work, sides: readonly WorkSide[]): Work {
  return { ...work, sides, cups: sides.map(({ name }) => ({ name, steps: [] })) };
}

/** The match begun with a target of the book. */
export function withBookTarget(work: Work, id: string, data: MatchPageData): Work {
  const target = data.targets.find((each) => each.id === id);
  if (!target) {
    const { target: _, whole: __, ...rest } = work;
    return rest;
  }
  // A laminate has two sides; of a target with more parts the first two are taken.
  const parts = target.parts.slice(0, 2);
  const isPlastic = (id: string | undefined): id is string =>
    data.materials.some((each) => each.id === id && each.kind === 'plastic');
  const [{ plastic: own }] = parts as [(typeof parts)[number]];
  const sides = parts.map(
    ({ name, overWhite, overBlack, thicknessMm, flakes, plastic }): WorkSide => ({
      name,
      overWhite: bookColour(overWhite),
      ...(overBlack && { overBlack: bookColour(overBlack) }),
      thicknessMm: within('thicknessMm', thicknessMm),
      flakes: flakes.map((flake) => keptFlake(flake)),
      ...(parts.length > 1 && isPlastic(plastic) ? { plastic } : {}),
    }),
  );
  const mold = data.molds.some((each) => each.id === target.mold) ? target.mold! : work.mold;
  const { whole: _, ...others } = work;
  return withTarget(
    {
      ...others,
      target: id,
      title: work.title,
      arrangement: sides.length === 1 ? 'solid' : target.apart || target.parts.length > 2 ? 'apart' : 'together',
      tolerance: within('tolerance', target.tolerance),
      mold,
      ...(parts.length === 1 && isPlastic(own) ? { plastic: own } : {}),
      ...(target.apart === false ? { whole: true } : {}),
    },
    sides,
  );
}

function keptFlake({ hex, sizeMm, coverage }: WantedFlake): WorkFlake {
  const kept = coverage === undefined ? {} : { coverage: within('coverage', coverage) };
  return { hex, sizeMm: within('flakeMm', sizeMm), ...kept };
}

/** The match with the cups of a proposal begun, by drops and spoons or by weight. */
export function withRecipe(
  work: Work,
  answer: number,
  recipe: RecipeProposal,
  data: MatchPageData,
  weighing = false,
): Work {
  const { cups } = recipe;
  return cups.reduce(
    (all, cup, at) =>
      begunAnew(all, cups.length > 1 ? at : answer, [
        { do: 'add', recipe: true, amounts: amountsOf(cup.amounts, data, weighing) },
      ]),
    work,
  );
}

/** Measured amounts as the log keeps them: as drops and spoons, or as what was weighed instead. */
export function amountsOf(
  amounts: readonly Pick<RecipeAmount, 'material' | 'cut' | 'grams' | 'text' | 'weighed'>[],
  data: MatchPageData,
  weighing = false,
): readonly WorkAmount[] {
  return amounts.map((amount) => {
    const { grams: bottle, text, cut } = weighing ? (amount.weighed ?? amount) : amount;
    const dosed = cut ?? required(data.materials, amount.material);
    const grams = bottle / (cut?.bottlePerGram ?? 1);
    return bookAmount({ material: dosed.id, dose: fileDose({ grams, text }, dosed), grams }, dosed);
  });
}

/** A proposal as steps of the log. */
export function stepsOf(
  { additions, thin }: Pick<Proposal, 'additions' | 'thin'>,
  data: MatchPageData,
  weighing: boolean,
): readonly WorkStep[] {
  return [
    ...(thin ? [{ do: 'plastic' as const, ml: thin.ml }] : []),
    ...(additions.length > 0 ? [{ do: 'add' as const, amounts: amountsOf(additions, data, weighing) }] : []),
  ];
}
