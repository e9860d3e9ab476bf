import type { Settings } from '../book/model.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import type { Kind } from '../recipe/source.ts';

/** What a new file is made from. */
export interface Scaffolded {
  readonly kind: Kind;
  readonly title: string;
  /** The ids of what the book already has. */
  readonly ids: ReadonlyMap<Kind, readonly string[]>;
  /** `2026-03-14` */
  readonly today: string;
  /** The units of the book, and the plastic that it uses where none is named. */
  readonly settings: Pick<Settings, 'volume' | 'temperature' | 'plastic'>;
  /** The recipe that a new recipe comes from. */
  readonly parent?: { readonly id: string; readonly cups: readonly string[] };
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

/** Amounts of an example, in the units of either kind of book. */
const METRIC = {
  cup: '100 ml',
  cavity: '6 ml',
  sprue: '3 ml',
  bait: '6 g',
  chip: '3 mm',
  body: '9 mm',
  thin: '2 mm',
  seen: '5 mm',
};
const US: typeof METRIC = {
  cup: '4 fl oz',
  cavity: '0.2 fl oz',
  sprue: '0.1 fl oz',
  bait: '0.2 oz',
  chip: '1/8 in',
  body: '3/8 in',
  thin: '1/16 in',
  seen: '3/16 in',
};
const CELSIUS = { flake: '180 °C', most: '190 °C', from: '165 °C', to: '180 °C' };
const FAHRENHEIT: typeof CELSIUS = { flake: '355 °F', most: '375 °F', from: '330 °F', to: '355 °F' };

const amountsOf = ({ settings }: Scaffolded): typeof METRIC => (settings.volume === 'ml' ? METRIC : US);
const heatOf = ({ settings }: Scaffolded): typeof CELSIUS => (settings.temperature === '°C' ? CELSIUS : FAHRENHEIT);

const TEXTS: Readonly<Record<Kind, (made: Scaffolded) => Text>> = {
  recipe: (made) => {
    const { ids, today, settings } = made;
    const usual = settings.plastic;
    const plastic = usual !== undefined && ids.get('plastic')?.includes(usual) ? usual : first(ids, 'plastic');
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
      `made: ${today}\npattern: solid\nmold: ${mold}\nbaits: 20\ncups:\n  body:\n    plastic: ${amountsOf(made).cup} ${plastic}\n${add}`,
      'What it is for, what it looks like in the water, what to mind the next time.',
    ];
  },
  colorant: (made) => [
    `# What its colour rests on: one colour at the smallest dose that gives it here, or chips over white and over black.\nlook:\n  kind: dye\n  colour: "#8a5a2b"\n  dose: 10 drops per ${amountsOf(made).cup}\n  thickness: ${amountsOf(made).chip}\n# Weigh twenty drops once, and every amount becomes exact.\n# drop: { count: 20, mass: 0.98 g }\n# highest: ${heatOf(made).most}\n`,
    'Where it is bought, and how it behaves.',
  ],
  powder: (made) => [
    `# The colour of the smallest dose that gives it.\nlook:\n  kind: pearl\n  colour: "#e9e4d4"\n  dose: 1/4 tsp per ${amountsOf(made).cup}\n# Mass of a level millilitre as it is spooned.\n# bulk: 0.4 g/ml\n# highest: ${heatOf(made).most}\n`,
    'Where it is bought, and how it behaves.',
  ],
  flake: (made) => [
    `look:\n  colour: "#b87333"\nshape: hexagon\nsize: 0.040 in\nfinish: metallic\n# bulk: 0.6 g/ml\n# highest: ${heatOf(made).flake}\n`,
    'Where it is bought, and how it behaves.',
  ],
  plastic: (made) => [
    `hardness: medium\n# The range in which its supplier says to pour.\n# working: { from: ${heatOf(made).from}, to: ${heatOf(made).to} }\n# highest: ${heatOf(made).most}\n`,
    'Where it is bought, and how it pours.',
  ],
  additive: () => [
    '# bulk: 1.2 g/ml, of salt and powders: a level millilitre, weighed\n# drop: 0.05 ml, of liquids\n# most: 3 %\n',
    'What it does, and how much of it is too much.',
  ],
  mold: (made) => {
    const { bait, cavity, sprue, body, thin } = amountsOf(made);
    return [
      `cavities: 2\n# Or the mass of a plain bait, \`bait: ${bait}\`.\ncavity: ${cavity}\nsprue: ${sprue}\nbody: ${body}\nthin: ${thin}\nthin-part: tail\nlength: 3 in\nshape: minnow\n`,
      'How it fills, and what to mind.',
    ];
  },
  target: (made) => [
    `over-white: "#c9a866"\nover-black: "#5c4a2a"\nthickness: ${amountsOf(made).seen}\n# tolerance: 2\n`,
    'What it is, and in what light it was looked at.',
  ],
  book: () => [
    '# maker: Who made it\n# address: https://book.example/\n# units: { volume: fl oz, temperature: °F, currency: $ }\n# tools:\n#   scale: 0.01 g\n',
    "A foreword: whose book it is, and what for.\n\nHot plastic burns. Read the supplier's safety data sheet first.",
  ],
};

function derived(made: Scaffolded, { id, cups }: NonNullable<Scaffolded['parent']>): Text {
  const [cup = 'NAME'] = cups;
  const others = cups.length > 1 ? ` Its cups are ${cups.join(', ')}.` : '';
  return [
    `made: ${made.today}\nfrom: ${id}\n# Only what differs. A cup that is not named here is the one of ${id}.${others}\n# cups:\n#   ${cup}:\n#     add:\n#       some-colorant: 2 drops per ${amountsOf(made).cup}\n`,
    `What is different from [${id}](${id}.md), and why.`,
  ];
}

function first(ids: Scaffolded['ids'], kind: 'plastic' | 'mold'): string {
  const id = ids.get(kind)?.[0];
  if (id !== undefined) return id;
  throw new Refusal(
    `A recipe names a ${kind}, and the book has none yet. Start one first: npx cupbook new NAME --kind ${kind}`,
  );
}
