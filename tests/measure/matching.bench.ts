/**
 * How long one answer of matching takes, from a shelf of 40 of which every bottle is in doubt. How good the answers are is printed by
 * `npm run bench foreign`.
 */
import { type CupState, scaleCup } from '../../src/cup/ledger.ts';
import { seededRandom } from '../../src/cup/random.ts';
import { firstRecipe } from '../../src/matching/first-recipe.ts';
import { nextAddition } from '../../src/matching/next-addition.ts';
import type { TargetPart } from '../../src/matching/target/target-part.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { plainBelief } from '../matching/plain-belief.ts';
import { BENCH, CLEAR, largeShelf } from '../matching/sample-shelf.ts';

const SEEDS = 60;
const WARM = 10;
const shelf = [...largeShelf(40), CLEAR];
const coloured = shelf.filter(({ typical }) => typical !== undefined);
const strength = Object.fromEntries(coloured.map(({ id }) => [id, 0.2]));
const belief = plainBelief(shelf, { strength, all: 0.65 });
const asked = { shelf, belief, optics: USUAL_OPTICS, bench: BENCH, tolerance: 2 };

/** A mixture of two to four bottles at a tenth to all of their typical doses, and how it looks. */
function hidden(seed: number): { readonly cup: CupState; readonly target: TargetPart } {
  const random = seededRandom(seed);
  const picked = [...coloured].sort(() => random() - 0.5).slice(0, 2 + Math.floor(random() * 3));
  const materials = Object.fromEntries(picked.map(({ id, typical }) => [id, 120 * typical! * 0.1 ** random()]));
  const cup = { plastics: { [CLEAR.id]: 120 }, materials };
  const contents = picked.map(({ id }) => [id, materials[id]! / 120] as const);
  const { overWhite, overBlack } = belief.mean({
    layers: [{ plastics: [[CLEAR.id, 1]], contents, thicknessMm: 6 }],
  });
  return { cup, target: { name: 'body', overWhite, overBlack, thicknessMm: 6, axisSd: 0.4 } };
}

const percentile = (values: readonly number[], part: number): number =>
  [...values].sort((one, other) => one - other)[Math.min(values.length - 1, Math.ceil(part * values.length) - 1)]!;

/** Milliseconds of the processor, not of the wall: other work on the machine does not count. */
function timed(
  title: string,
  ask: (asked: ReturnType<typeof hidden>) => { readonly advice: { readonly kind: string } },
): void {
  const took = new Map<string, number[]>();
  for (let seed = 0; seed < SEEDS; seed++) {
    const question = hidden(5000 + seed);
    const start = process.cpuUsage();
    const { kind } = ask(question).advice;
    const { user, system } = process.cpuUsage(start);
    // The first few warm the compiler up, as the first touch of the page does.
    if (seed >= WARM) took.set(kind, [...(took.get(kind) ?? []), (user + system) / 1000]);
  }
  for (const [kind, each] of took)
    console.log(
      `${title}, ${kind}: ${each.length} times, median ${percentile(each, 0.5).toFixed(0)} ms, 95th percentile ${percentile(each, 0.95).toFixed(0)} ms`,
    );
}

timed('next addition, shelf of 40', ({ cup, target }) =>
  nextAddition({ ...asked, target, cup: { ...cup, materials: scaleCup(cup, 0.8).materials } }),
);
timed('first recipe, shelf of 40', ({ target }) =>
  firstRecipe({ ...asked, parts: [target], plastic: CLEAR.id, plasticMl: 120 }),
);
