import type { Source } from '../../../../src/recipe/source.ts';
import type { Written, WrittenFields } from '../../../../src/recipe/write-front-matter.ts';
import type { Noted } from '../world/mixtures.ts';
import { file } from './shelf-files.ts';

/** Something that a maker writes as having been put in. */
export interface LoggedAmount {
  readonly material: string;
  readonly grams: number;
  /** As it was measured: "3 drops", "1/8 tsp + 1 smidgen", "0.12 g". */
  readonly text: string;
}

/** A step of a cup's log. */
export interface LoggedStep {
  /** Begun afresh with so much plastic, ml. */
  readonly newCup?: number;
  /** Let down with so much, ml. */
  readonly thinMl?: number;
  readonly add: readonly LoggedAmount[];
  readonly pourMl: number;
  /** Its looks, the first first. */
  readonly seen: readonly WrittenFields[];
}

/** The file of a recipe for a target, with the rounds so far. */
export function recipeFile(id: string, target: string, plasticMl: number, steps: readonly LoggedStep[]): Source {
  return file(`colours/${id}.md`, {
    title: titleOf(id),
    for: target,
    mold: 'stick',
    cups: { body: { plastic: plasticOf(plasticMl), log: steps.map(stepFields) } },
  });
}

/** The file of a recipe that nobody has looked at. */
export function unseenFile(id: string, plasticMl: number, mixture: readonly Noted[]): Source {
  return file(`colours/${id}.md`, {
    title: titleOf(id),
    mold: 'stick',
    cups: {
      body: {
        plastic: plasticOf(plasticMl),
        add: Object.fromEntries(mixture.map(({ bottle, grams }) => [bottle.product.id, `${grams.toPrecision(5)} g`])),
      },
    },
  });
}

/** The file of a chip of the maker's own. */
export function chipFile(
  id: string,
  {
    plasticMl,
    thicknessMm,
    amounts,
  }: { readonly plasticMl: number; readonly thicknessMm: number; readonly amounts: readonly LoggedAmount[] },
  seen: WrittenFields,
): Source {
  return file(`chips/${id}.md`, {
    title: titleOf(id),
    plastic: plasticOf(plasticMl),
    add: amountFields(amounts),
    seen: { ...seen, thickness: `${thicknessMm} mm` },
  });
}

/** The file of a target. */
export function targetFile(id: string, look: WrittenFields): Source {
  return file(`targets/${id}.md`, { title: titleOf(id), mold: 'stick', ...look });
}

function stepFields({ newCup, thinMl, add, pourMl, seen }: LoggedStep): WrittenFields {
  return {
    ...(newCup === undefined ? {} : { 'new-cup': plasticOf(newCup) }),
    ...(thinMl === undefined ? {} : { plastic: plasticOf(thinMl) }),
    add: amountFields(add),
    pour: `${pourMl} ml`,
    seen: seen.length === 1 ? seen[0]! : seen,
  };
}

function amountFields(amounts: readonly LoggedAmount[]): WrittenFields {
  return Object.fromEntries(amounts.map((each): [string, Written] => [each.material, amountText(each)]));
}

function plasticOf(ml: number): string {
  return `${Number(ml.toFixed(3))} ml clear`;
}

/** One amount as a field takes it: a sum of spoons is written as the grams that it counts for. */
function amountText({ text, grams }: LoggedAmount): string {
  return /^\d+ drops?$/.test(text) ? text : `${grams.toPrecision(6)} g`;
}

function titleOf(id: string): string {
  const words = id.replace('-', ' ');
  return `${words[0]?.toUpperCase()}${words.slice(1)}`;
}
