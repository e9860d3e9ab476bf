import type { Settings } from '../book/model.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import type { Kind } from '../kinds/kinds.ts';
import type { FieldsOf } from '../recipe/schema.ts';
import { frontMatterText, ToFillIn, type Written } from '../recipe/write-front-matter.ts';

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
 * The text of a new file. What only its maker knows is left empty, each with a comment on what to write; the most useful of the fields that may
 * be left out stand as comments.
 *
 * Throws: Refusal where the book lacks something that the file must name.
 */
export function scaffoldText(made: Scaffolded): string {
  const {
    fields,
    remarks = [],
    notes,
    text = '',
  } = made.parent === undefined ? FILES[made.kind](made) : derived(made, made.parent);
  return frontMatterText({ title: made.title, ...fields }, text, [
    ...remarks,
    ` Below the next line, your notes: ${notes}`,
  ]);
}

interface NewFile<K extends Kind = Kind> {
  readonly fields: { readonly [Name in Exclude<keyof FieldsOf<K>, 'title'>]?: Written };
  /** Lines of comments behind the fields, each without its `#`. */
  readonly remarks?: readonly string[];
  /** What the notes are for, as one more comment: nobody publishes a hint as a note. */
  readonly notes: string;
  /** What the notes begin with. */
  readonly text?: string;
}

/** A field that may be left out: right as it is once its `#` is removed. */
const optional = (line: string, hint: string): string => `${line}   # ${hint}`;

const toFillIn = (hint: string): ToFillIn => new ToFillIn(hint);

/** Amounts of an example, in the units of either kind of book. */
const METRIC = {
  cup: '100 ml',
  cavity: '6 ml',
  sprue: '3 ml',
  bait: '6 g',
  body: '9 mm',
  thin: '2 mm',
  gate: '4 mm',
  chip: '3 mm',
  ownChip: '6 mm',
  size: '1 mm',
  long: '75 mm',
};
const US: typeof METRIC = {
  cup: '4 fl oz',
  cavity: '0.2 fl oz',
  sprue: '0.1 fl oz',
  bait: '0.2 oz',
  body: '3/8 in',
  thin: '1/16 in',
  gate: '5/32 in',
  chip: '1/8 in',
  ownChip: '1/4 in',
  size: '0.040 in',
  long: '3 in',
};
const CELSIUS = { most: '190 °C', from: '165 °C', to: '180 °C' };
const FAHRENHEIT: typeof CELSIUS = { most: '375 °F', from: '330 °F', to: '355 °F' };

const amountsOf = ({ settings }: Scaffolded): typeof METRIC => (settings.volume === 'ml' ? METRIC : US);
const heatOf = ({ settings }: Scaffolded): typeof CELSIUS => (settings.temperature === '°C' ? CELSIUS : FAHRENHEIT);

const BOUGHT = 'where it is bought, and how it behaves';
const COLOUR = 'in quotes, such as "#8a5a2b": take it from a photo, with the Match page';

/** One colour and a kind, as most materials have their look. */
const lookOf = (made: Scaffolded, kinds: string, dose: string): Written => ({
  kind: toFillIn(kinds),
  colour: toFillIn(COLOUR),
  dose: toFillIn(`the least that gives this colour, such as ${dose} per ${amountsOf(made).cup}`),
  thickness: toFillIn(`only for a dye: of what you looked at, such as ${amountsOf(made).chip}; else remove this line`),
});

const highest = (made: Scaffolded): string =>
  optional(`highest: ${heatOf(made).most}`, 'the most heat that its supplier allows');

const EFFECT = optional('effect: fluorescent', 'or glow, or shift: no recipe proposes it where nobody asks for that');

const FILES: { readonly [K in Kind]: (made: Scaffolded) => NewFile<K> } = {
  recipe: (made) => {
    const { ids, today } = made;
    const plastic = usualPlastic(made);
    const colours = ['colorant', 'powder', 'flake'] as const;
    const amounts = colours.flatMap((kind) =>
      (ids.get(kind)?.slice(0, 1) ?? []).map((id) => `${id}: ${kind === 'colorant' ? '10 drops' : '1/8 tsp'}`),
    );
    return {
      fields: {
        made: today,
        pattern: 'solid',
        mold: onlyOne(ids, 'mold') ?? toFillIn(`one of ${(ids.get('mold') ?? []).join(', ')}`),
        cups: {
          body: {
            plastic: toFillIn(`how much of which, such as ${amountsOf(made).cup} ${plastic}`),
            add: toFillIn(
              `what you put in, such as { ${(amounts.length === 0 ? ['brown: 10 drops'] : amounts).join(', ')} }`,
            ),
          },
        },
      },
      remarks: [optional('baits: 20', 'how many you usually pour')],
      notes: 'what it is for, what it looks like in the water, what to mind the next time',
    };
  },
  chip: (made) => {
    const [colorant = 'brown'] = made.ids.get('colorant') ?? [];
    return {
      fields: {
        made: made.today,
        plastic: toFillIn(`how much of which, such as ${amountsOf(made).cup} ${usualPlastic(made)}`),
        add: toFillIn(`what you put in, such as { ${colorant}: 1 drop }; little of it teaches more than much`),
        seen: {
          'over-white': toFillIn(COLOUR),
          'over-black': toFillIn('the same over something black; remove this line if you did not look'),
          thickness: amountsOf(made).ownChip,
        },
      },
      remarks: [optional('publish: full', 'readers get this chip, and what it has taught; else they do not')],
      notes: 'how you looked at it',
    };
  },
  colorant: (made) => ({
    fields: { look: lookOf(made, 'dye, pigment, pearl, white or clear', '10 drops') },
    remarks: [
      optional('drop: { count: 20, mass: 0.98 g }', 'twenty drops, weighed once: then every amount is exact'),
      highest(made),
      EFFECT,
      ' If this is another colorant, let down for small doses, write `cut` in place of all this: see the manual (The files in full).',
    ],
    notes: BOUGHT,
  }),
  powder: (made) => ({
    fields: { look: lookOf(made, 'pearl, pigment, white, dye or clear', '1/4 tsp') },
    remarks: [optional('bulk: 0.3 g/ml', 'a level millilitre as it is spooned, weighed'), highest(made), EFFECT],
    notes: BOUGHT,
  }),
  flake: (made) => ({
    fields: {
      look: { colour: toFillIn(COLOUR) },
      shape: toFillIn('hexagon, square, round or strip'),
      size: toFillIn(`across flats, such as ${amountsOf(made).size}`),
      finish: toFillIn('metallic, matte, pearl, hologram, translucent or fluorescent'),
    },
    remarks: [
      optional('bulk: 0.45 g/ml', 'a level millilitre as it is spooned, weighed'),
      highest(made),
      optional('bears: 3 heats', 'how often it may be hot, counting the melt, if its supplier says so'),
    ],
    notes: BOUGHT,
  }),
  plastic: (made) => ({
    fields: {
      hardness: toFillIn('soft, medium, firm or floating'),
      working: toFillIn(
        `where its supplier says to pour, such as { from: ${heatOf(made).from}, to: ${heatOf(made).to} }; else remove this line`,
      ),
      highest: toFillIn(`the most heat that its supplier allows, such as ${heatOf(made).most}; else remove this line`),
    },
    remarks: [optional('look: { kind: milky }', 'if it never turns clear, however hot')],
    notes: 'where it is bought, and how it pours',
  }),
  additive: () => ({
    fields: {
      use: toFillIn('softener, hardener, stabiliser, scent or salt; remove this line if it is none of these'),
      look: toFillIn(
        'how it clouds, such as { kind: white, colour: "#f0efea", dose: 10 % }; remove this line if it does not',
      ),
      bulk: toFillIn(
        'of salt and powders, a level millilitre, weighed, such as 1.2 g/ml; of a liquid write instead drop: 0.05 ml',
      ),
    },
    remarks: [optional('most: 3 %', 'the most that a cup takes')],
    notes: 'what it does, and how much of it is too much',
  }),
  mold: (made) => {
    const { bait, cavity, sprue, body, thin, gate, long } = amountsOf(made);
    return {
      fields: {
        cavities: toFillIn('how many baits a shot gives, such as 2'),
        cavity: toFillIn(`what one holds, such as ${cavity}; or instead bait: ${bait}, of a plain bait, weighed`),
        body: toFillIn(`how thick the bait is through the body, such as ${body}`),
        thin: toFillIn(`and through the tail or the thinnest part, such as ${thin}`),
        shape: toFillIn('minnow, worm, grub, craw, stick, tube or creature'),
      },
      remarks: [
        optional(`sprue: ${sprue}`, 'what stays in the mold beside the baits'),
        'thin-part: tail',
        optional('method: injected', 'or poured, or dipped'),
        optional(`gate: ${gate}`, 'the narrowest way in; none where you pour open'),
        `length: ${long}`,
        optional('bag: 8', 'baits in a bag'),
      ],
      notes: 'how it fills, and what to mind',
    };
  },
  target: (made) => ({
    fields: {
      'over-white': toFillIn(COLOUR),
      'over-black': toFillIn('the same over something black; remove this line if you did not look'),
      thickness: toFillIn(`where you looked, such as ${amountsOf(made).body}`),
    },
    remarks: [
      'tolerance: 2',
      ' Of a bait with two sides, write `parts` in place of the colours above: see the manual (Matching a colour).',
    ],
    notes: 'what it is, and in what light you looked at it',
  }),
  book: () => ({
    fields: {},
    remarks: [
      'maker: Who made it',
      'address: https://book.example/',
      'units: { volume: fl oz, temperature: °F, currency: $ }',
      'tools: { scale: 0.01 g }',
    ],
    notes: 'a foreword, whose book it is, and what for',
    text: "Hot plastic burns. Read the supplier's safety data sheet first.",
  }),
};

function derived(made: Scaffolded, { id, cups }: NonNullable<Scaffolded['parent']>): NewFile<'recipe'> {
  const [cup = 'NAME'] = cups;
  const others = cups.length > 1 ? ` Its cups are ${cups.join(', ')}.` : '';
  return {
    fields: { made: made.today, from: id },
    remarks: [
      ` Only what differs. A cup that is not named here is the one of ${id}.${others}`,
      'cups:',
      `  ${cup}:`,
      '    add:',
      `      some-colorant: 2 drops per ${amountsOf(made).cup}`,
    ],
    notes: `what is different from [${id}](${id}.md), and why`,
  };
}

/** The plastic that a recipe is most likely of: the book's, else the first. */
function usualPlastic({ ids, settings }: Scaffolded): string {
  const usual = settings.plastic;
  const [first] = ids.get('plastic') ?? [];
  if (first === undefined) throw lacking('plastic');
  return usual !== undefined && ids.get('plastic')?.includes(usual) ? usual : first;
}

/** The name of the only mold; undefined where there are several. */
function onlyOne(ids: Scaffolded['ids'], kind: 'mold'): string | undefined {
  const [first, ...others] = ids.get(kind) ?? [];
  if (first === undefined) throw lacking(kind);
  return others.length === 0 ? first : undefined;
}

function lacking(kind: 'plastic' | 'mold'): Refusal {
  return new Refusal(
    `A recipe names a ${kind}, and the book has none yet. Start one first: npx cupbook new NAME --kind ${kind}`,
  );
}
