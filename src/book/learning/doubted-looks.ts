/**
 * Looks that count for little in what a book learns, each where it stands in the files.
 *
 * @packageDocumentation
 */
import type { LearnedShelf } from '../../learning/learned-shelf.ts';
import type { LogFault, LogSlip } from '../../learning/log-fault.ts';
import type { FieldPath } from '../../recipe/field-path.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { defined } from '../../values/defined.ts';
import type { ChipSpec } from '../cups/chip-spec.ts';
import type { CupSpec } from '../cups/cup-specs.ts';
import type { FilledCup, FilledRound } from '../cups/fill-cup.ts';
import { unloggedIn } from '../cups/unlogged-in.ts';
import type { DoubtedLook } from '../model/doubted-look.ts';
import { baitLookKey, lookKey } from './cup-keys.ts';
import type { LookedThings } from './looks-of-readers.ts';
import { isOf, type NamedMaterial, roundsSince, toldSlip } from './told-slip.ts';

/** Below this it is said how far a look is believed. Convention of this book. */
const LITTLE = 0.5;

/** A look that counts for little, and where to say so. */
export interface PlacedDoubt {
  readonly look: DoubtedLook;
  readonly thing: Thing<'recipe' | 'chip'>;
  /** Of the addition that most likely went wrong; of the look where none did, or it stands in no step. */
  readonly path: FieldPath;
  readonly part: 'key' | 'value';
}

/** Looks of which less than half is believed, and those with which a fault begins; in the order of the recipes, then of the chips. */
export function doubtedLooks(
  { recipes, chips }: LookedThings,
  { data, weights }: LearnedShelf,
  faults: readonly LogFault[],
  shelf: ReadonlyMap<string, NamedMaterial>,
): readonly PlacedDoubt[] {
  const believed = new Map(data.looks.map(({ key }, place) => [key, weights.looks[place]!]));
  const beginning = new Map(faults.map((fault) => [fault.looks[0]!, fault]));
  const doubt = (keys: readonly string[]): { readonly weight: number; readonly fault?: LogFault } | undefined => {
    const weight = Math.min(1, ...keys.map((key) => believed.get(key) ?? 1));
    const fault = keys.map((key) => beginning.get(key)).find((each) => each !== undefined);
    return fault || weight < LITTLE ? { weight, ...defined({ fault }) } : undefined;
  };
  const ofCups = [...recipes.flatMap(({ cups }) => cups), ...chips].flatMap((cup) => {
    // What went in unlogged is asked already.
    const isAsked = unloggedIn(cup).length > 0;
    return cup.rounds.flatMap((round): PlacedDoubt[] => {
      const found = doubt(round.seen.map((_, index) => lookKey(cup, round.number, index)));
      if (!found || (isAsked && found.weight >= LITTLE)) return [];
      return [placedDoubt(cup, round, isAsked ? { weight: found.weight } : found, shelf)];
    });
  });
  const ofBaits = recipes.flatMap(({ recipe }) =>
    (recipe.fields.seen ?? []).flatMap((_, bait): PlacedDoubt[] => {
      const found = doubt([baitLookKey(recipe.id, bait)]);
      if (!found) return [];
      const { weight, fault } = found;
      const wrong = fault && {
        deltaE: fault.deltaE,
        slips: fault.slips.map((slip) => toldSlip(slip, shelf, undefined, [])),
      };
      const look: DoubtedLook = { of: 'recipe', id: recipe.id, at: { bait }, weight, ...defined({ wrong }) };
      return [{ look, thing: recipe, path: ['seen', bait], part: 'value' }];
    }),
  );
  return [...ofCups, ...ofBaits];
}

function placedDoubt(
  cup: FilledCup<CupSpec | ChipSpec>,
  round: FilledRound,
  { weight, fault }: { readonly weight: number; readonly fault?: LogFault },
  shelf: ReadonlyMap<string, NamedMaterial>,
): PlacedDoubt {
  const { recipe, name } = cup.spec;
  const since = fault ? roundsSince(cup.rounds, round.number, fault.since) : [];
  const logged = [...(since[0]?.number === 1 ? cup.written : []), ...since.flatMap(({ added }) => added)];
  const wrong = fault && {
    deltaE: fault.deltaE,
    slips: fault.slips.map((slip) => toldSlip(slip, shelf, round, logged)),
  };
  const at = fault?.slips[0] && placeOfAddition(cup, since, fault.slips[0]);
  return {
    look: { of: recipe.kind, id: recipe.id, at: { cup: name, round: round.number }, weight, ...defined({ wrong }) },
    thing: recipe,
    path: at ?? placeOfLook(cup, round),
    part: at ? 'key' : 'value',
  };
}

/** The addition that a slip is about, the last of them; undefined where it is about none that this file has. */
function placeOfAddition(
  { spec, rounds, places, written }: FilledCup<CupSpec | ChipSpec>,
  since: readonly FilledRound[],
  slip: LogSlip,
): FieldPath | undefined {
  if (slip.kind === 'bad-look' || slip.kind === 'extra') return undefined;
  for (const { number, first, added } of [...since].reverse()) {
    const names = added.filter((amount) => isOf(amount, slip.material)).map(({ material }) => material);
    for (const step of [...new Set(places.slice(first, rounds[number]?.first))].reverse()) {
      const add = spec.fields.log?.[step]?.add ?? {};
      const name = names.find((each) => Object.hasOwn(add, each));
      if (name !== undefined) return [...spec.path, 'log', step, 'add', name];
    }
  }
  const begun = since[0]?.number === 1 && written.find((amount) => isOf(amount, slip.material));
  return begun ? [...spec.path, 'add', begun.material] : undefined;
}

function placeOfLook({ spec, places }: FilledCup<CupSpec | ChipSpec>, { looked }: FilledRound): FieldPath {
  const step = looked === undefined ? undefined : places[looked];
  return [...spec.path, ...(step === undefined ? ['seen'] : ['log', step, 'seen'])];
}
