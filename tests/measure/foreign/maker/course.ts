/**
 * One match, as a maker goes through it: the first recipe as it is measured, a pour of 14 ml, a look, then what the book proposes, until
 * the book says to stop or eight rounds have gone by. Everything is written into the file, and the book compiled anew before each question.
 *
 * @packageDocumentation
 */

import { firstRecipeFor, nextAdditionFor } from '../../../../src/book/match/ask-matching.ts';
import type { Book } from '../../../../src/book/model.ts';
import { defined } from '../../../../src/values/defined.ts';
import { required } from '../../../../src/values/required.ts';
import { type LoggedStep, recipeFile } from '../book/log-text.ts';
import { lookFields } from '../book/look-fields.ts';
import type { MakersBook, Opened } from '../book/makers-book.ts';
import type { Condition } from '../conditions.ts';
import { pairDifference, type SeenPair } from '../physics/eye.ts';
import type { Chance } from '../world/chance.ts';
import { type Camera, noted } from '../world/eye-noise.ts';
import { targetMixture } from '../world/mixtures.ts';
import { trueLook } from '../world/true-cup.ts';
import type { World } from '../world/world.ts';
import type { CommandCheck } from './command-check.ts';
import type { CourseResult, RoundResult } from './course-result.ts';
import { lookedAgain } from './looked-again.ts';
import { NotedTarget } from './noted-target.ts';
import { numberIn } from './number-in.ts';
import { afterPour, afterStep, freshCup, lookOf, type MakersCup, POUR_ML } from './pours.ts';
import { looksAtOther, type SizedSlip } from './slips.ts';
import { toldFaults } from './told-faults.ts';
import { ending, firstPour, nextStep, promisedOf, type ToDo } from './what-to-do.ts';

/** What a maker works with. */
export interface Bench {
  readonly world: World;
  readonly book: MakersBook;
  readonly condition: Condition;
  readonly camera: Camera;
  readonly chance: Chance;
  readonly commands: CommandCheck;
}

const CUP_ML = 120;
const MOST_MATERIALS = 4;
const MOST_ROUNDS = 8;
/** Less is left in a cup than is worth another pour. */
const LEAST_LEFT_ML = 20;

/** Goes through the match of a number, from 1. */
export async function course(bench: Bench, number: number): Promise<CourseResult> {
  const { world, book, condition, chance, commands } = bench;
  const wanted = trueLook(targetMixture(world, condition.offShelf ?? false, CUP_ML, chance), world);
  const target = new NotedTarget(bench, `target-${number}`, wanted);
  const asked = (): ReturnType<typeof firstRecipeFor> => {
    const { book: now } = book.opened();
    return firstRecipeFor(now, required(now.targets, target.id), { most: MOST_MATERIALS, plasticMl: CUP_ML });
  };
  let answers = asked();
  if (answers[0] && target.looksMore(answers[0].recipe)) answers = asked();
  await commands.compare('match', target.id, book.sources, answers);
  const first = answers[0]?.recipe;
  const begun = first && firstPour(first);
  if (!begun) return { number, ended: first ? ending(first) : 'no answer', rounds: [] };
  const [best] = first.proposals;
  const rest = await rounds(bench, begun, { target, recipe: `match-${number}`, wanted });
  return { number, ...(best ? { promised: promisedOf(best) } : {}), ...rest };
}

interface Match {
  readonly target: NotedTarget;
  readonly recipe: string;
  readonly wanted: SeenPair;
}

async function rounds(bench: Bench, begun: ToDo, match: Match): Promise<Omit<CourseResult, 'number' | 'promised'>> {
  const { world, book, condition, chance, commands } = bench;
  const done: RoundResult[] = [];
  const steps: LoggedStep[] = [];
  let cup: MakersCup = freshCup(CUP_ML);
  for (let todo = begun; ; ) {
    cup = afterStep(cup, todo, world, chance, condition.falseLogs ?? false);
    const looked = look(bench, cup);
    steps.push(loggedStep(todo, [lookFields(noted(looked.at, bench.camera, chance), condition)]));
    const opened = written(bench, match, steps);
    const told = toldFaults(opened.diagnostics, `colours/${match.recipe}.md`);
    const slips = [...cup.slips, ...looked.slips];
    const isFaulty = cup.isFaulty || looked.slips.length > 0;
    done.push({
      deltaE: pairDifference(lookOf(cup, world), match.wanted),
      ...(slips.length === 0 ? {} : { slips }),
      ...(isFaulty ? { isFaulty } : {}),
      ...(told.length === 0 ? {} : { told: told.map(({ says }) => says) }),
    });
    const shown = isFaulty ? {} : { shown: looked.at };
    cup = afterPour(cup, world);
    const answer = nextAsTold(bench, match, { steps, at: looked.at }, opened);
    await commands.compare('next', match.recipe, book.sources, answer);
    const next = nextStep(answer);
    if (!next)
      return { ended: ending(answer), ...defined({ likely: numberIn(answer, 'likely') }), rounds: done, ...shown };
    if (done.length === MOST_ROUNDS) return { ended: 'eight rounds', rounds: done, ...shown };
    if (cup.real.plasticMl < LEAST_LEFT_ML && next.newCupMl === undefined)
      return { ended: 'cup empty', rounds: done, ...shown };
    todo = next;
  }
}

/** Asks what to do, and asks again once the looks that would tell more are made: at the target, at the cup, and at the target after that. */
function nextAsTold(
  bench: Bench,
  match: Match,
  { steps, at }: { readonly steps: LoggedStep[]; readonly at: SeenPair },
  opened: Opened,
): ReturnType<typeof nextAdditionFor> {
  let answer = nextFor(bench, match, steps, opened);
  const atTarget = (): boolean => match.target.looksMore(answer);
  const atCup = (): boolean => {
    const again = lookedAgain(answer, steps.at(-1)!, at, bench);
    if (again) steps[steps.length - 1] = again;
    return again !== undefined;
  };
  for (const looks of [atTarget, atCup, atTarget])
    if (looks()) answer = nextFor(bench, match, steps, written(bench, match, steps));
  return answer;
}

/** Asks what to do; where the book asks what went in, the maker has looked again, and that is what was seen. */
function nextFor(bench: Bench, match: Match, steps: LoggedStep[], opened: Opened): ReturnType<typeof nextAdditionFor> {
  const answer = asked(opened.book, match);
  const last = steps.at(-1);
  if (answer.advice.kind !== 'ask-what-went-in' || !last) return answer;
  steps[steps.length - 1] = { ...last, seen: last.seen.map((each) => ({ ...each, checked: true })) };
  return asked(written(bench, match, steps).book, match);
}

function asked(book: Book, match: Match): ReturnType<typeof nextAdditionFor> {
  const recipe = required(book.recipes, match.recipe);
  const [cup] = recipe.cups;
  if (!cup) throw new RangeError(`${match.recipe} has no cup`);
  return nextAdditionFor(book, recipe, cup, required(book.targets, match.target.id));
}

function written({ book }: Bench, { recipe, target }: Match, steps: readonly LoggedStep[]): Opened {
  book.write(recipeFile(recipe, target.id, CUP_ML, steps));
  return book.opened();
}

function loggedStep({ newCupMl, thinMl, add }: ToDo, seen: LoggedStep['seen']): LoggedStep {
  return {
    ...(newCupMl === undefined ? {} : { newCup: newCupMl }),
    ...(thinMl === undefined ? {} : { thinMl }),
    add,
    pourMl: POUR_ML,
    seen,
  };
}

/** What is looked at: the cup, or by a slip one that is not it. */
function look(
  { world, condition, chance }: Bench,
  cup: MakersCup,
): { readonly at: SeenPair; readonly slips: readonly SizedSlip[] } {
  const at = lookOf(cup, world);
  if (!condition.falseLogs || !looksAtOther(chance)) return { at, slips: [] };
  const other = trueLook(targetMixture(world, false, CUP_ML, chance), world);
  return { at: other, slips: [{ kind: 'other-cup', size: pairDifference(at, other) }] };
}
