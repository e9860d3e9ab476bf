/**
 * The commands of matching: `match`, `next`, `let-down`, `substitute`. Each answers from the book as it is, in text or as JSON.
 *
 * @packageDocumentation
 */
import {
  cupForMatching,
  firstRecipeFor,
  lettingDownFor,
  nextAdditionFor,
  substitutesFor,
  targetForCup,
} from '../book/match/ask-matching.ts';
import type { Cup } from '../book/model/cup.ts';
import type { Recipe } from '../book/model/recipe.ts';
import type { Target } from '../book/model/target.ts';
import type { Book } from '../book/model.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import type { UnlikeSides } from '../matching/target/unlike-sides.ts';
import { printable } from '../shell/printable.ts';
import { cutBackText } from '../words/cut-back.ts';
import { firstRecipeText } from '../words/first-recipe.ts';
import type { FlakedBait } from '../words/flake.ts';
import { nextAdditionText } from '../words/next-addition.ts';
import { substitutionText } from '../words/substitution.ts';
import { ANSWER_IN_TARGET, unlikeSidesText } from '../words/unlike-sides.ts';
import type { Command, OptionValues, Surroundings } from './command.ts';
import { findNamed, nameHint } from './find-named.ts';
import {
  type Legend,
  legendText,
  printedAddition,
  printedCutBack,
  printedRecipes,
  printedSubstitution,
} from './matching-text.ts';
import { plasticOption } from './plastic-option.ts';
import { type SoundBook, soundBook } from './sound-book.ts';
import { wholeNumber } from './whole-number.ts';

const JSON_OPTION = { json: { help: 'as JSON, for other programs' } } as const;
const STOCK_OPTION = {
  'in-stock': { help: 'only what is in stock (no `stock` in a file counts as in stock)' },
} as const;
const TARGET_OPTION = { target: { value: 'TARGET', help: "the target (default: the recipe's own, `for`)" } } as const;

const matchCommand: Command = {
  name: 'match',
  usage: 'TARGET [--materials N] [--plastic VOLUME] [--in-stock]',
  summary: 'find recipes for a target from the shelf',
  words: [1, 1],
  options: {
    materials: { value: 'N', help: 'at most so many colorants and powders in a cup, 1 to 6 (default 4)' },
    plastic: {
      value: 'VOLUME',
      help: "plastic in each cup (default 120 ml, or 4 fl oz); a number alone is in the book's unit",
    },
    ...STOCK_OPTION,
    ...JSON_OPTION,
  },
  details:
    'Two parts are the two sides of a finished bait, worked out together; with `apart: true` in the target, each by itself.',
  run([id = ''], values, surroundings) {
    const most = wholeNumber(values, 'materials', 4, 6);
    const sound = soundBook(surroundings.recipes);
    const { book } = sound;
    const target = findNamed('target', id, sound);
    const answers = firstRecipeFor(book, target, {
      most,
      inStock: values['in-stock'] === true,
      plasticMl: plasticOption(typeof values.plastic === 'string' ? values.plastic : undefined, book.settings),
    });
    const asks = askedOfTarget(target);
    const told = answers.map((each) => ({ ...each, says: firstRecipeText(each.recipe, book.settings), ...asks }));
    return answer(
      values,
      told,
      told.map(({ recipe: { advice, proposals } }) => ({ advice, measured: proposals })),
      ({ part, says, recipe }) => printedRecipes(part, says, recipe, { ...book, ...targetBait(target, book) }),
      asks,
    );
  },
};

const nextCommand: Command = {
  name: 'next',
  usage: 'RECIPE[/CUP] [--target TARGET] [--in-stock]',
  summary: 'judge a cup, and say what to add to it now',
  words: [1, 1],
  options: { ...TARGET_OPTION, ...STOCK_OPTION, ...JSON_OPTION },
  details: 'The cup is what its log leaves in it; the model learns from every round with a colour.',
  run([name = ''], values, surroundings) {
    const { book, recipe, cups, target } = cupsOf(name, values, surroundings);
    const asks = askedOfTarget(target);
    const told = cups.map((cup) => {
      const next = nextAdditionFor(book, recipe, cup, target, { inStock: values['in-stock'] === true });
      return { cup: cup.name, says: nextAdditionText(next, book.settings), next, ...asks };
    });
    return answer(
      values,
      told,
      told.map(({ next: { advice, proposals, startAgain } }) => ({
        advice,
        measured: [...proposals, ...(startAgain ? [startAgain] : [])],
      })),
      ({ cup, says, next }) => printedAddition(cup, says, next, { ...book, ...cupBait(recipe, cup, book) }),
      asks,
    );
  },
};

/** How much clear plastic lets an overshot cup down. */
export const letDownCommand: Command = {
  name: 'let-down',
  usage: 'RECIPE[/CUP] [--target TARGET]',
  summary: 'say how much clear plastic rescues an overshot cup, or whether to start over',
  words: [1, 1],
  options: { ...TARGET_OPTION, ...JSON_OPTION },
  run([name = ''], values, surroundings) {
    const { book, recipe, cups, target } = cupsOf(name, values, surroundings);
    const told = cups.map((cup) => {
      const letDown = lettingDownFor(book, recipe, cup, target);
      return { cup: cup.name, says: cutBackText(letDown, book.settings), letDown };
    });
    return answer(
      values,
      told,
      told.map(({ letDown: { advice, plasticAlone, mended, fresh } }) => ({
        advice,
        measured: [plasticAlone, mended, fresh].flatMap((each) => each ?? []),
      })),
      ({ cup, says, letDown }) => printedCutBack(cup, says, letDown, { ...book, ...cupBait(recipe, cup, book) }),
    );
  },
};

const substituteCommand: Command = {
  name: 'substitute',
  usage: 'RECIPE[/CUP] MATERIAL [--in-stock]',
  summary: 'suggest a substitute for a material in a recipe',
  words: [2, 2],
  options: { ...STOCK_OPTION, ...JSON_OPTION },
  run([name = '', id = ''], values, surroundings) {
    const sound = soundBook(surroundings.recipes);
    const { book } = sound;
    const { recipe, cups } = recipeCups(sound, name);
    // A cut is no more than a way to measure its bottle.
    const bottle = book.materials.find(({ cuts = [] }) => cuts.some((cut) => cut.id === id));
    const material = bottle ?? findNamed('material', id, sound);
    const having = cups.filter(({ contents, plastics }) =>
      [...contents, ...plastics].some((content) => content.material === material.id),
    );
    if (having.length === 0)
      throw new Refusal(`${recipe.title} has no ${material.title} in it: ${contentsText(cups)}.`);
    const told = having.map((cup) => {
      const found = substitutesFor(book, recipe, cup, material.id, { inStock: values['in-stock'] === true });
      return { cup: cup.name, says: substitutionText(found, book.settings), ...found };
    });
    return answer(
      values,
      told,
      told.map(({ advice, swaps, recipes }) => ({ advice, measured: [...swaps, ...recipes] })),
      (each) => printedSubstitution(each.cup, each.says, each, { ...book, ...cupBait(recipe, each.cup, book) }),
    );
  },
};

/** The commands of matching, in the order of a match. */
export const matchCommands: readonly Command[] = [matchCommand, nextCommand, letDownCommand, substituteCommand];

/** The bait of a target, of which each of two sides has half; nothing where no mold says how large it is. */
function targetBait({ mold, parts }: Target, { molds }: Book): { readonly bait?: FlakedBait } {
  const { cavityMl } = molds.find(({ id }) => id === mold) ?? {};
  return cavityMl === undefined ? {} : { bait: { cavityMl, share: 1 / parts.length } };
}

/** The bait that a cup of a recipe is for. */
function cupBait({ mold, cups }: Recipe, cup: string, { molds }: Book): { readonly bait?: FlakedBait } {
  const { cavityMl } = molds.find(({ id }) => id === mold) ?? {};
  const { share } = cups.find(({ name }) => name === cup) ?? {};
  return cavityMl === undefined || share === undefined ? {} : { bait: { cavityMl, share } };
}

/** What of an answer decides what is to be said beside it. */
interface Answered {
  readonly advice: { readonly kind: string };
  /** What it proposes. */
  readonly measured: readonly { readonly weighed?: object }[];
}

/** What is asked of a target before its answers. */
interface Asked {
  readonly asks?: UnlikeSides & { readonly says: string };
}

function askedOfTarget({ unlikeSides: sides }: Target): Asked {
  return sides === undefined ? {} : { asks: { ...sides, says: unlikeSidesText(sides) } };
}

/** Prints the answers and what their words mean, and returns the exit code: 1 where a question had a fault. */
function answer<T>(
  values: OptionValues,
  told: readonly T[],
  answered: readonly Answered[],
  text: (each: T) => string,
  { asks }: Asked = {},
): number {
  const legend: Legend = {
    judged: answered.some(({ advice }) => advice.kind !== 'fault'),
    weighed: answered.some(({ measured }) => measured.some(({ weighed }) => weighed !== undefined)),
    inStock: values['in-stock'] === true,
  };
  const meant = legendText(legend);
  const first = asks === undefined ? [] : [`${asks.says} ${ANSWER_IN_TARGET}`];
  const printed = [...first, ...told.map(text), ...(meant === '' ? [] : [meant])].join('\n\n');
  console.log(values.json ? JSON.stringify(told, null, 2) : printable(printed));
  return answered.some(({ advice }) => advice.kind === 'fault') ? 1 : 0;
}

function recipeCups(sound: SoundBook, name: string): { readonly recipe: Recipe; readonly cups: readonly Cup[] } {
  const [id = ''] = name.split('/', 1);
  const recipe = findNamed('recipe', id, sound);
  const wanted = name === id ? undefined : name.slice(id.length + 1);
  if (wanted === undefined) return { recipe, cups: recipe.cups };
  const cup = recipe.cups.find((each) => each.name === wanted);
  if (cup) return { recipe, cups: [cup] };
  const names = recipe.cups.map((each) => each.name);
  throw new Refusal(`${recipe.title} has no cup "${wanted}".${nameHint(wanted, names)}`);
}

function cupsOf(
  name: string,
  values: OptionValues,
  surroundings: Surroundings,
): { book: Book; recipe: Recipe; cups: readonly Cup[]; target: Target } {
  const sound = soundBook(surroundings.recipes);
  const { book } = sound;
  const { recipe, cups } = recipeCups(sound, name);
  const wanted = typeof values.target === 'string' ? values.target : recipe.target;
  if (wanted === undefined) {
    throw new Refusal(`${recipe.title} has no target. Write \`for: TARGET\` in its file, or give --target TARGET.`);
  }
  const found = findNamed('target', wanted, sound);
  const target = name.includes('/') ? targetForCup(found, cups[0]!) : found;
  const matched = cups.filter((cup) => cupForMatching(target, cup, recipe) !== undefined);
  if (matched.length === 0) {
    throw new Refusal(noPartText(recipe, cups, target));
  }
  return { book, recipe, cups: matched, target };
}

function noPartText({ id, title }: Recipe, cups: readonly Cup[], target: Target): string {
  const names = cups.map((cup) => cup.name);
  if (target.parts.length > 1) {
    const parts = target.parts.map((part) => part.name).join(', ');
    return `No part of ${target.title} (${parts}) is for ${names.join(', ')}. Give the part the name of the cup.`;
  }
  return `${target.title} is one colour, and ${title} has the cups ${names.join(', ')}. Say which one it is for, such as ${id}/${names[0]}; or name them in targets/${target.id}.md: parts: { ${names[0]}: { over-white: … } }.`;
}

function contentsText(cups: readonly Cup[]): string {
  return [...new Set(cups.flatMap(({ contents }) => contents.map(({ material }) => material)))].join(', ');
}
