/**
 * The commands of matching: `match`, `next`, `substitute`, `thin`. Each answers from the book as it is, in text or as JSON.
 *
 * @packageDocumentation
 */
import {
  cupForMatching,
  firstRecipeFor,
  nextAdditionFor,
  substitutesFor,
  targetForCup,
  thinningFor,
} from '../book/match/ask-matching.ts';
import type { Book, Cup, Material, Recipe, Target } from '../book/model.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import { printable } from '../shell/printable.ts';
import type { Command, OptionValues, Surroundings } from './command.ts';
import { findNamed, nameHint } from './find-named.ts';
import { cutBackText, firstRecipeText, legendText, nextAdditionText, substitutionText } from './matching-text.ts';
import { plasticOption } from './plastic-option.ts';
import { type SoundBook, soundBook } from './sound-book.ts';

const JSON_OPTION = { json: { help: 'as JSON, for other programs' } } as const;
const STOCK_OPTION = {
  'in-stock': { help: 'only what is left on the shelf; what has no `stock` in its file counts as there' },
} as const;
const TARGET_OPTION = { target: { value: 'TARGET', help: "the target (default: the recipe's own, `for`)" } } as const;

const matchCommand: Command = {
  name: 'match',
  usage: 'TARGET [--materials N] [--plastic VOLUME] [--in-stock]',
  summary: 'find recipes for a target from the shelf',
  words: [1, 1],
  options: {
    materials: { value: 'N', help: 'most colorants and powders in a cup, 1 to 6 (default 4)' },
    plastic: {
      value: 'VOLUME',
      help: "plastic in each cup (default 120 ml, or 4 fl oz); a number alone is in the book's unit",
    },
    ...STOCK_OPTION,
    ...JSON_OPTION,
  },
  details:
    'Two parts are the sides of a finished bait, found together; of a target that says `apart: true` each is found by itself.',
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
    const advice = answers.map(({ recipe }) => recipe.advice);
    return answer(values, answers, advice, () =>
      answers.map(({ part, recipe }) => firstRecipeText(part, recipe, book)).join('\n\n'),
    );
  },
};

const nextCommand: Command = {
  name: 'next',
  usage: 'RECIPE[/CUP] [--target TARGET] [--in-stock]',
  summary: 'say what is wrong with a cup, and what to add to it now',
  words: [1, 1],
  options: { ...TARGET_OPTION, ...STOCK_OPTION, ...JSON_OPTION },
  details: 'The cup is what its log leaves; the rounds with a colour in them teach the model.',
  run([name = ''], values, surroundings) {
    const { book, recipe, cups, target } = cupsOf(name, values, surroundings);
    const answers = cups.map((cup) => ({
      cup: cup.name,
      next: nextAdditionFor(book, recipe, cup, target, { inStock: values['in-stock'] === true }),
    }));
    const advice = answers.map(({ next }) => next.advice);
    return answer(values, answers, advice, () =>
      answers.map(({ cup, next }) => nextAdditionText(cup, next, book)).join('\n\n'),
    );
  },
};

const thinCommand: Command = {
  name: 'thin',
  usage: 'RECIPE[/CUP] [--target TARGET]',
  summary: 'say how much clear plastic brings an overshot cup back, or whether to start again',
  words: [1, 1],
  options: { ...TARGET_OPTION, ...JSON_OPTION },
  run([name = ''], values, surroundings) {
    const { book, recipe, cups, target } = cupsOf(name, values, surroundings);
    const answers = cups.map((cup) => ({ cup: cup.name, thin: thinningFor(book, recipe, cup, target) }));
    const advice = answers.map(({ thin }) => thin.advice);
    return answer(values, answers, advice, () =>
      answers.map(({ cup, thin }) => cutBackText(cup, thin, book)).join('\n\n'),
    );
  },
};

const substituteCommand: Command = {
  name: 'substitute',
  usage: 'RECIPE[/CUP] MATERIAL [--in-stock]',
  summary: 'say what can stand for a material in a recipe',
  words: [2, 2],
  options: { ...STOCK_OPTION, ...JSON_OPTION },
  run([name = '', id = ''], values, surroundings) {
    const sound = soundBook(surroundings.recipes);
    const { book } = sound;
    const { recipe, cups } = recipeCups(sound, name);
    const material = findNamed('material', id, sound);
    const having = cups.filter(({ contents }) => contents.some((content) => content.material === material.id));
    if (having.length === 0)
      throw new Refusal(`${recipe.title} has no ${material.title} in it: ${contentsText(cups, book)}.`);
    const answers = having.map((cup) => ({
      cup: cup.name,
      ...substitutesFor(book, recipe, cup, material.id, { inStock: values['in-stock'] === true }),
    }));
    const advice = answers.map((each) => each.advice);
    return answer(values, answers, advice, () => answers.map((each) => substitutionText(each.cup, each)).join('\n\n'));
  },
};

/** The commands of matching, in the order of a match. */
export const matchCommands: readonly Command[] = [matchCommand, nextCommand, thinCommand, substituteCommand];

/** Prints the answers and what their words mean, and returns the exit code: 1 where a question had a fault. */
function answer(values: OptionValues, answers: unknown, advice: readonly string[], text: () => string): number {
  const json = JSON.stringify(answers, null, 2);
  const legend = { weighed: json.includes('"weighedDeltaE"'), inStock: values['in-stock'] === true };
  const meant = json.includes('"deltaE"') ? `\n\n${legendText(legend)}` : '';
  console.log(values.json ? json : printable(`${text()}${meant}`));
  return advice.includes('fault') ? 1 : 0;
}

function recipeCups(sound: SoundBook, name: string): { readonly recipe: Recipe; readonly cups: readonly Cup[] } {
  const [id = '', wanted] = name.split('/');
  const recipe = findNamed('recipe', id, sound);
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

function contentsText(cups: readonly Cup[], book: Book): string {
  const titles = new Map(book.materials.map((material): [string, Material] => [material.id, material]));
  const names = new Set(
    cups.flatMap(({ contents }) => contents.map(({ material }) => titles.get(material)?.id ?? material)),
  );
  return [...names].join(', ');
}

function wholeNumber(values: OptionValues, name: string, usual: number, most: number): number {
  const text = values[name];
  if (typeof text !== 'string') return usual;
  const number = Number(text);
  if (Number.isInteger(number) && number > 0 && number <= most) return number;
  throw new Refusal(`--${name} takes a whole number from 1 to ${most}, not "${text}".`);
}
