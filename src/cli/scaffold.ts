import { Refusal } from '../eleventy/refusal.ts';
import type { Kind } from '../recipe/source.ts';

/** What a new file is made from. */
export interface Scaffolded {
  readonly kind: Kind;
  readonly title: string;
  /** The ids of what the book already has. */
  readonly ids: ReadonlyMap<Kind, readonly string[]>;
  /** `2026-03-14` */
  readonly today: string;
  /** The recipe that a new recipe comes from. */
  readonly parent?: string;
}

/**
 * The text of a new file: every field that must be there, with an example of its value, and the most useful of the
 * others as comments.
 *
 * Throws: Refusal where the book lacks something that the file must name.
 */
export function scaffoldText(made: Scaffolded): string {
  const title = `title: ${JSON.stringify(made.title)}`;
  const [front, notes] = made.parent === undefined ? TEXTS[made.kind](made) : derived(made, made.parent);
  return `---\n${title}\n${front}---\n\n${notes}\n`;
}

type Text = readonly [frontMatter: string, notes: string];

const TEXTS: Readonly<Record<Kind, (made: Scaffolded) => Text>> = {
  recipe: ({ ids, today }) => {
    const plastic = first(ids, 'plastic');
    const mold = first(ids, 'mold');
    const colorant = ids.get('colorant')?.[0];
    const powder = ids.get('powder')?.[0];
    const flake = ids.get('flake')?.[0];
    const amounts = [
      ...(colorant ? [`${colorant}: 10 drops`] : []),
      ...(powder ? [`${powder}: 1/8 tsp`] : []),
      ...(flake ? [`${flake}: 1/8 tsp`] : []),
    ];
    const add = amounts.length === 0 ? '' : `    add:\n${amounts.map((amount) => `      ${amount}\n`).join('')}`;
    return [
      `made: ${today}\npattern: solid\nmold: ${mold}\nbaits: 20\ncups:\n  body:\n    plastic: 100 ml ${plastic}\n${add}`,
      'What it is for, what it looks like in the water, what to mind the next time.',
    ];
  },
  colorant: () => [
    '# What its colour rests on: one colour at a usual dose here, or chips over white and over black.\nlook:\n  kind: dye\n  colour: "#8a5a2b"\n  dose: 10 drops per 100 ml\n  thickness: 3 mm\n# Weigh twenty drops once, and every amount becomes exact.\n# drop: { count: 20, mass: 0.98 g }\n# highest: 190 °C\n',
    'Where it is bought, and how it behaves.',
  ],
  powder: () => [
    'look:\n  kind: pearl\n  colour: "#e9e4d4"\n  dose: 1/4 tsp per 100 ml\n# Mass of a level millilitre as it is spooned.\n# bulk: 0.4 g/ml\n# highest: 190 °C\n',
    'Where it is bought, and how it behaves.',
  ],
  flake: () => [
    'look:\n  colour: "#b87333"\nshape: hexagon\nsize: 0.040 in\nfinish: metallic\n# bulk: 0.6 g/ml\n# highest: 180 °C\n',
    'Where it is bought, and how it behaves.',
  ],
  plastic: () => [
    'hardness: medium\n# The range in which its supplier says to pour.\n# working: { from: 165 °C, to: 180 °C }\n# highest: 190 °C\n',
    'Where it is bought, and how it pours.',
  ],
  additive: () => [
    '# bulk: 1.2 g/ml, of salt and powders: a level millilitre, weighed\n# drop: 0.05 ml, of liquids\n# most: 3 %\n',
    'What it does, and how much of it is too much.',
  ],
  mold: () => [
    'cavities: 2\n# Or the mass of a plain bait, `bait: 6 g`.\ncavity: 6 ml\nsprue: 3 ml\nbody: 9 mm\nthin: 2 mm\nthin-part: tail\nlength: 3 in\nshape: minnow\n',
    'How it fills, and what to mind.',
  ],
  target: () => [
    'over-white: "#c9a866"\nover-black: "#5c4a2a"\nthickness: 5 mm\n# tolerance: 2\n',
    'What it is, and in what light it was looked at.',
  ],
  book: () => [
    '# maker: Who made it\n# address: https://book.example/\n# tools:\n#   scale: 0.01 g\n',
    "A foreword: whose book it is, and what for.\n\nHot plastic burns. Read the supplier's safety data sheet first.",
  ],
};

function derived({ today }: Scaffolded, parent: string): Text {
  return [
    `made: ${today}\nfrom: ${parent}\n# Only what differs. A cup that is not named here is the one of ${parent}.\n# cups:\n#   body:\n#     from: ${parent}\n#     add:\n#       some-colorant: 2 drops per 100 ml\n`,
    `What is different from [${parent}](${parent}.md), and why.`,
  ];
}

function first(ids: Scaffolded['ids'], kind: 'plastic' | 'mold'): string {
  const id = ids.get(kind)?.[0];
  if (id !== undefined) return id;
  throw new Refusal(
    `A recipe names a ${kind}, and the book has none yet. Start one first: cupbook new NAME --kind ${kind}`,
  );
}
