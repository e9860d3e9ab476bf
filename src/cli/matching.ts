/**
 * The commands of matching: `match`, `next`, `substitute`, `thin`. Each answers from the book as it is, in text or as JSON.
 *
 * @packageDocumentation
 */
import { cupForMatching, firstRecipeFor, nextAdditionFor, substitutesFor, thinningFor } from '../book/ask-matching.ts';
import type { Book, Cup, Material, Recipe, Target } from '../book/model.ts';
import { nearestName } from '../diagnostics/nearest-name.ts';
import { loadBook } from '../eleventy/load-book.ts';
import { printable } from '../eleventy/printable.ts';
import { Refusal } from '../eleventy/refusal.ts';
import { reportText } from '../eleventy/report.ts';
import type { Command, OptionValues, Surroundings } from './command.ts';
import { cutBackText, firstRecipeText, nextAdditionText, substitutionText } from './matching-text.ts';

const JSON_OPTION = { json: { help: 'as JSON, for other programs' } } as const;
const STOCK_OPTION = { 'in-stock': { help: 'only what is left on the shelf' } } as const;
const TARGET_OPTION = { target: { value: 'TARGET', help: "the target (default: the recipe's own, `for`)" } } as const;

const matchCommand: Command = {
  name: 'match',
  usage: 'TARGET [--materials N] [--plastic ML] [--in-stock]',
  summary: 'find recipes for a target from the shelf',
  words: [1, 1],
  options: {
    materials: { value: 'N', help: 'most colorants and powders in a cup, 1 to 6 (default 4)' },
    plastic: { value: 'ML', help: 'plastic in each cup (default 120)' },
    ...STOCK_OPTION,
    ...JSON_OPTION,
  },
  details:
    'Two parts are the sides of a finished bait, found together; of a target that says `apart: true` each is found by itself.',
  run([id = ''], values, surroundings) {
    const book = loaded(surroundings);
    const target = named('target', id, book.targets);
    const most = wholeNumber(values, 'materials', 4);
    const answers = firstRecipeFor(book, target, {
      most,
      inStock: values['in-stock'] === true,
      plasticMl: wholeNumber(values, 'plastic', 120),
    });
    return answer(values, answers, () =>
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
    return answer(values, answers, () =>
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
    return answer(values, answers, () => answers.map(({ cup, thin }) => cutBackText(cup, thin, book)).join('\n\n'));
  },
};

const substituteCommand: Command = {
  name: 'substitute',
  usage: 'RECIPE[/CUP] MATERIAL [--in-stock]',
  summary: 'say what can stand for a material in a recipe',
  words: [2, 2],
  options: { ...STOCK_OPTION, ...JSON_OPTION },
  run([name = '', id = ''], values, surroundings) {
    const book = loaded(surroundings);
    const { recipe, cups } = recipeCups(book, name);
    const material = named('material', id, book.materials);
    const having = cups.filter(({ contents }) => contents.some((content) => content.material === material.id));
    if (having.length === 0)
      throw new Refusal(`${recipe.title} has no ${material.title} in it: ${contentsText(cups, book)}.`);
    const answers = having.map((cup) => ({
      cup: cup.name,
      ...substitutesFor(book, recipe, cup, material.id, { inStock: values['in-stock'] === true }),
    }));
    return answer(values, answers, () => answers.map((each) => substitutionText(each.cup, each)).join('\n\n'));
  },
};

/** The commands of matching, in the order of a match. */
export const matchCommands: readonly Command[] = [matchCommand, nextCommand, thinCommand, substituteCommand];

function answer(values: OptionValues, answers: unknown, text: () => string): number {
  console.log(values.json ? JSON.stringify(answers, null, 2) : printable(text()));
  return 0;
}

function loaded({ recipes }: Surroundings): Book {
  const result = loadBook(recipes);
  if (result.book) return result.book;
  console.error(reportText(result));
  throw new Refusal('The book has errors, and nothing can be worked out from it. Mend what is listed above.');
}

function named<T extends { readonly id: string }>(what: string, id: string, things: readonly T[]): T {
  const found = things.find((thing) => thing.id === id);
  if (found) return found;
  const names = things.map((thing) => thing.id);
  const nearest = nearestName(id, names);
  const hint =
    nearest === undefined
      ? names.length === 0
        ? ''
        : ` There are: ${names.join(', ')}.`
      : ` Did you mean ${nearest}?`;
  throw new Refusal(`The book has no ${what} "${id}".${hint}`);
}

function recipeCups(book: Book, name: string): { readonly recipe: Recipe; readonly cups: readonly Cup[] } {
  const [id = '', cup] = name.split('/');
  const recipe = named('recipe', id, book.recipes);
  if (cup === undefined) return { recipe, cups: recipe.cups };
  const cups = recipe.cups.map((each) => ({ ...each, id: each.name }));
  return { recipe, cups: [named(`cup in ${recipe.id}`, cup, cups)] };
}

function cupsOf(
  name: string,
  values: OptionValues,
  surroundings: Surroundings,
): { book: Book; recipe: Recipe; cups: readonly Cup[]; target: Target } {
  const book = loaded(surroundings);
  const { recipe, cups } = recipeCups(book, name);
  const wanted = typeof values.target === 'string' ? values.target : recipe.target;
  if (wanted === undefined) {
    throw new Refusal(`${recipe.title} is for no target. Write \`for: TARGET\` in its file, or give --target TARGET.`);
  }
  const target = named('target', wanted, book.targets);
  const matched = cups.filter((cup) => cupForMatching(target, cup, recipe) !== undefined);
  if (matched.length === 0) {
    const parts = target.parts.map((part) => part.name).join(', ');
    throw new Refusal(
      `No part of ${target.title} (${parts}) is for ${cups.map((cup) => cup.name).join(', ')}. Give the part the name of the cup.`,
    );
  }
  return { book, recipe, cups: matched, target };
}

function contentsText(cups: readonly Cup[], book: Book): string {
  const titles = new Map(book.materials.map((material): [string, Material] => [material.id, material]));
  const names = new Set(
    cups.flatMap(({ contents }) => contents.map(({ material }) => titles.get(material)?.id ?? material)),
  );
  return [...names].join(', ');
}

function wholeNumber(values: OptionValues, name: string, usual: number): number {
  const text = values[name];
  if (typeof text !== 'string') return usual;
  const number = Number(text);
  if (Number.isInteger(number) && number > 0) return number;
  throw new Refusal(`--${name} takes a whole number above 0, not "${text}".`);
}
