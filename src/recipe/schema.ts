/**
 * The front matter of each kind of file: every field, its unit, its default.
 *
 * Volumes come out in ml, masses in g, lengths in mm, temperatures in °C, shares as fractions of 1.
 *
 * @packageDocumentation
 */
import { z } from 'zod';
import { USE_NAMES } from '../kinds/additive-uses.ts';
import { EFFECTS } from '../kinds/effects.ts';
import type { Kind } from '../kinds/kinds.ts';
import { METHOD_NAMES } from '../patterns/methods.ts';
import { CORE_ORDERS, PATTERN_NAMES } from '../patterns/patterns.ts';
import { SHAPE_NAMES } from '../shapes/shape-names.ts';
import { address } from './address-field.ts';
import { colour, seenColour, targetOverBlack, targetOverWhite } from './colour-fields.ts';
import { cut, lookOrCut } from './cut-field.ts';
import { date } from './date-field.ts';
import type { FieldFault } from './field-fault.ts';
import {
  dose,
  doseInPlastic,
  dropSize,
  duration,
  fields,
  flakeSize,
  length,
  mass,
  oneOrMore,
  quantity,
  rejectedShare,
  share,
  shortOrLong,
  temperature,
  text,
  title,
  volume,
  words,
} from './fields.ts';
import { HOW_SURE, LOOK_FIELDS } from './look-fields.ts';
import { density, heats, positive, wholeNumber } from './number-fields.ts';
import { photo } from './photo-field.ts';
import { plasticAmount } from './plastic-field.ts';
import { reference } from './reference-field.ts';
import { stock } from './stock-field.ts';

const effect = z.enum(EFFECTS);

const publish = z.enum(['full', 'look', 'no']);

/** Amounts by the name of the material. */
const amounts = z.record(z.string(), dose);

/** Most cups of a recipe: a bait has three at most, and one poured in layers a few more. Convention of this book. */
const MOST_CUPS = 12;

/** Something for each cup, by the names of the cups. */
const byCup = <T extends z.ZodType>(each: T): z.ZodRecord<z.ZodString, T> =>
  z.record(z.string(), each).superRefine((cups, context) => {
    const count = Object.keys(cups).length;
    if (count <= MOST_CUPS) return;
    const fault: FieldFault = {
      code: 'field/too-long',
      found: `${count} cups`,
      expected: `at most ${MOST_CUPS}`,
      why: 'a bait is poured from one to three, and each is computed at length',
      fix: 'make several recipes of them',
    };
    context.addIssue({ code: 'custom', message: 'refused', params: { ...fault } });
  });

/** `book.md` */
export const bookSchema = fields({
  title,
  maker: title.exactOptional(),
  /** Where the book will be published; QR codes on cards point there. */
  address: address.exactOptional(),
  /** What is published of a recipe that does not say so itself: everything, only its look and name, or nothing. */
  publish: publish.default('full'),
  /** Whether the looks of its recipes and chips teach what its materials are; else their files alone say. */
  learn: z.boolean().default(true),
  /** How amounts are shown to people. */
  units: fields({
    volume: z.enum(['ml', 'fl oz']).default('ml'),
    temperature: z.enum(['°C', '°F']).default('°C'),
    currency: words.default('€'),
  }).prefault({}),
  /** What the bench can measure with. */
  tools: fields({
    drops: z.boolean().default(true),
    /** Sizes of the spoons; an empty list for a bench without spoons. Default 1 tsp to 1/8 tsp, pinch, smidgen. */
    spoons: z.array(quantity('volume')).exactOptional(),
    /** Step of the scale. Left out: no scale. */
    scale: mass.exactOptional(),
    /** What an injector holds, and what stays in it: 3 to 10 ml, common practice, no source. Left out: none is reckoned with. */
    injector: fields({ holds: volume, left: volume.default(8) }).exactOptional(),
    /**
     * How far a drop and a level spoonful vary (one standard deviation). Default 8 % and 15 %. Common practice, no source: drops of one bottle
     * 5 to 8 %, of different bottles 25; a level teaspoon of flake or pearl 10 to 15, a pinch or smidgen 25 to 30.
     */
    spread: fields({ drop: share.default(0.08), spoon: share.default(0.15) }).prefault({}),
  }).prefault({}),
  /** Largest colour difference that counts as the same colour, ΔE00. */
  tolerance: positive.default(2),
  /** Plastic lost on the way. Left out: what is usual of how the mold is filled, and 10 % where that is not said. Common practice, no source. */
  loss: share.exactOptional(),
  /** Of the baits that are made, those that are thrown away. Left out: none. */
  rejects: rejectedShare.exactOptional(),
  /** What stays in a cup that is poured out. */
  'left-in-cup': volume.default(3),
  /** Size of the cups, and how far one is filled. Default half full: hot plastic foams and splashes. Common practice, no source. */
  cup: volume.default(350),
  fill: share.default(0.5),
  /** The plastic meant where a recipe names none. */
  plastic: reference.exactOptional(),
  /** The maker's own print of the measuring card. */
  'measuring-card': fields({
    /** How long the printed 80 mm are. Left out: as long as they say. */
    scale: length.exactOptional(),
    /** The bare paper, the black half and the greys, lightest first, as they were measured. Left out: not certified. */
    paper: seenColour.exactOptional(),
    black: seenColour.exactOptional(),
    greys: z.array(seenColour).exactOptional(),
  }).exactOptional(),
});

/** A look at a finished bait. */
const baitLook = fields({
  ...LOOK_FIELDS,
  /** The cup that faced the eye. Default: the first. */
  side: words.exactOptional(),
  /** Of each cup with a log, the round that the bait was poured after. */
  rounds: byCup(wholeNumber(1)).exactOptional(),
});

const step = fields({
  /** Begun afresh, with so much plastic: what was in the cup before was poured away. The recipe is the last cup. */
  'new-cup': oneOrMore(plasticAmount).exactOptional(),
  /** Highest temperature reached in this step. */
  heat: temperature.exactOptional(),
  /** Time above 160 °C in this step. */
  held: duration.exactOptional(),
  /** Heated again after it had cooled. */
  reheat: z.boolean().exactOptional(),
  /** Plastic added to let the cup down. */
  plastic: plasticAmount.exactOptional(),
  add: amounts.exactOptional(),
  pour: volume.exactOptional(),
  seen: oneOrMore(fields(LOOK_FIELDS)).exactOptional(),
  note: text.exactOptional(),
});

const cup = fields({
  /** Part of the bait that this cup makes. Default: what is left, shared equally. */
  share: share.exactOptional(),
  /** Plastic at the start. */
  plastic: oneOrMore(plasticAmount).exactOptional(),
  /** Another recipe's cup, `recipe/cup`, that this one is made from; `recipe` alone means its cup of the same name, or its only one. */
  from: words.exactOptional(),
  /** Amounts added: to the plastic, or on top of the cup that this one comes from. */
  add: amounts.exactOptional(),
  /** Amounts that replace those of the cup that this one comes from. */
  set: amounts.exactOptional(),
  /** Materials of the cup that this one comes from which are left out. */
  without: oneOrMore(reference).exactOptional(),
  /** The rounds in order, where the cup was worked out round by round. */
  log: z.array(step).min(1).exactOptional(),
});

/** `colours/*.md` */
export const recipeSchema = fields({
  title,
  made: date.exactOptional(),
  pattern: z.enum(PATTERN_NAMES).exactOptional(),
  /** Which cup of a bait with a core goes into the mold first. */
  order: z.enum(CORE_ORDERS).exactOptional(),
  mold: reference.exactOptional(),
  /** Baits of the batch that the card states. Default 20. */
  baits: wholeNumber(1).exactOptional(),
  /** The recipe that this one was made from. Cups that are not given come from there. */
  from: reference.exactOptional(),
  /** The target that this recipe is for. */
  for: reference.exactOptional(),
  publish: publish.exactOptional(),
  tags: z.array(words).exactOptional(),
  photos: z.array(photo).exactOptional(),
  /** Width of a streak in a swirl. Default 2 mm: common practice, no source. */
  streak: length.exactOptional(),
  cups: byCup(cup).exactOptional(),
  /** The finished bait, as it was seen: one look or several. */
  seen: oneOrMore(baitLook).exactOptional(),
});

/** `chips/*.md`: a chip of the maker's own bottles, poured to learn from. */
export const chipSchema = fields({
  title,
  made: date.exactOptional(),
  /** Plastic at the start. */
  plastic: oneOrMore(plasticAmount),
  /** Amounts added; or `log`. */
  add: amounts.exactOptional(),
  /** Several chips of one cup, round by round, each with what was seen. */
  log: z.array(step).min(1).exactOptional(),
  /** What was seen of it, beside `add`. Its thickness: see `CHIP_MM`. */
  seen: oneOrMore(fields(LOOK_FIELDS)).exactOptional(),
  /** Whether readers have it, and what it has taught. */
  publish: z.enum(['full', 'no']).default('no'),
});

/** A chip in a material's file: of the product, not of the maker's bottle. */
const labelChip = fields({
  dose: doseInPlastic,
  /** Thickness of the chip. */
  thickness: length,
  'over-white': seenColour,
  'over-black': seenColour,
  doubt: HOW_SURE.doubt,
  'contrast-doubt': LOOK_FIELDS['contrast-doubt'],
  photo: photo.exactOptional(),
  camera: LOOK_FIELDS.camera,
});

/** How a material looks: one colour and a kind, or chips seen over white and over black, or spectra. */
const look = fields({
  /** `measured`: from the films in `shelf/measurements.csv`. */
  kind: z.enum(['dye', 'pigment', 'pearl', 'white', 'clear', 'measured']).exactOptional(),
  /** Body colour at `dose`: thick enough to hide its backing, or for a dye over white at `thickness`. */
  colour: colour.exactOptional(),
  dose: doseInPlastic.exactOptional(),
  thickness: length.exactOptional(),
  chips: z.array(labelChip).min(1).exactOptional(),
});

const stocked = {
  title,
  price: positive.exactOptional(),
  pack: quantity('volume', 'mass').exactOptional(),
  /** What is left; 0 where it has run out. Left out: not counted, and there. */
  stock: stock.exactOptional(),
  /** Highest temperature that the supplier allows. */
  highest: temperature.exactOptional(),
  /** Most that a cup takes. */
  most: doseInPlastic.exactOptional(),
  /** Heats that the maker or supplier says it bears, the one in which it goes in included. */
  bears: heats.exactOptional(),
  photos: z.array(photo).exactOptional(),
};

/** A drop by its size, in ml, or by what so many of them weigh. */
const drop = shortOrLong(dropSize, fields({ count: wholeNumber(1), mass }), (value) => typeof value === 'object');

/** `shelf/colorants/*.md` */
export const colorantSchema = lookOrCut(
  fields({
    ...stocked,
    look: look.exactOptional(),
    density: density.exactOptional(),
    drop: drop.exactOptional(),
    /** What it does beside being of a colour: such a material is for targets that do so too. */
    effect: effect.exactOptional(),
    /** A dilution of another colorant, instead of `look` and all that follows from what is cut. */
    cut: cut.exactOptional(),
  }),
);

/** `shelf/powders/*.md` */
export const powderSchema = fields({
  ...stocked,
  look,
  density: density.exactOptional(),
  /** Mass of a level millilitre as it is spooned. */
  bulk: density.exactOptional(),
  /** As of a colorant. */
  effect: effect.exactOptional(),
});

/** `shelf/flakes/*.md` */
export const flakeSchema = fields({
  ...stocked,
  look: fields({ colour }),
  shape: z.enum(['hexagon', 'square', 'round', 'strip']).default('hexagon'),
  /** Across flats, or the side, or the width of a strip. */
  size: flakeSize,
  /** Length of a strip. */
  long: flakeSize.exactOptional(),
  /** Thickness of the film. */
  film: length.exactOptional(),
  finish: z.enum(['metallic', 'matte', 'pearl', 'hologram', 'translucent', 'fluorescent']).default('metallic'),
  density: density.exactOptional(),
  bulk: density.exactOptional(),
});

/** `shelf/plastics/*.md` */
export const plasticSchema = fields({
  ...stocked,
  look: fields({ kind: z.enum(['clear', 'milky']).default('clear') }).prefault({}),
  hardness: z.enum(['soft', 'medium', 'firm', 'floating']).exactOptional(),
  density: density.exactOptional(),
  /** Range in which the supplier says to pour. */
  working: fields({ from: temperature, to: temperature }).exactOptional(),
});

/** `shelf/additives/*.md` */
export const additiveSchema = fields({
  ...stocked,
  /** What it is for: that says when it goes into a cup. */
  use: z.enum(USE_NAMES).exactOptional(),
  /** Left out: no effect on the colour. */
  look: look.exactOptional(),
  density: density.exactOptional(),
  bulk: density.exactOptional(),
  drop: drop.exactOptional(),
});

/** `molds/*.md` */
export const moldSchema = fields({
  title,
  cavities: wholeNumber(1).default(1),
  /** Volume of one cavity; or give `bait`, and it follows from the plastic's density. */
  cavity: volume.exactOptional(),
  /** Mass of one plain bait. */
  bait: mass.exactOptional(),
  /** Plastic that a filled mold leaves in its sprues. */
  sprue: volume.exactOptional(),
  /** Thickness through the body, and through the thinnest part that shows. */
  body: length,
  /** Default 2 mm, or the body's where that is less. */
  thin: length.exactOptional(),
  /** What the thin part is called: tail, claws, wings. */
  'thin-part': words.default('tail'),
  /** The narrowest way in. Left out: poured open, or not measured. */
  gate: length.exactOptional(),
  length: length.exactOptional(),
  shape: z.enum(SHAPE_NAMES).default('minnow'),
  /** How it is filled. Left out: not said; a tube is dipped on rods. */
  method: z.enum(METHOD_NAMES).exactOptional(),
  /** The part of a shot that its manifold gives the first of two cups. Default half. */
  manifold: share.exactOptional(),
  /** Of the baits that are made in it, those that are thrown away. Default: the book's. */
  rejects: rejectedShare.exactOptional(),
  /** Baits in a bag. */
  bag: wholeNumber(1).exactOptional(),
  photos: z.array(photo).exactOptional(),
});

/** Flake of a target: what it looks like, and the share of what one looks at that is flake. Default: an ordinary load. */
const targetFlake = z.array(fields({ colour, size: flakeSize, coverage: share.exactOptional() }));

/** A colour to be matched, as it is seen. */
const targetPart = fields({
  'over-white': targetOverWhite,
  'over-black': targetOverBlack.exactOptional(),
  /** Thickness at which it was seen. Default: the body of the mold. */
  thickness: length.exactOptional(),
  ...HOW_SURE,
  'contrast-doubt': LOOK_FIELDS['contrast-doubt'],
  flake: targetFlake.exactOptional(),
  /** Plastic that its cup is begun with. Default: the plastic of a match. */
  plastic: reference.exactOptional(),
});

/** `targets/*.md` */
export const targetSchema = fields({
  title,
  /** What was seen of a target of one part. */
  'over-white': targetOverWhite.exactOptional(),
  'over-black': targetOverBlack.exactOptional(),
  thickness: length.exactOptional(),
  ...HOW_SURE,
  'contrast-doubt': LOOK_FIELDS['contrast-doubt'],
  /** What was seen part by part, by the names of the cups: the two sides of a laminate. */
  parts: byCup(targetPart).exactOptional(),
  /** Whether each part was seen by itself. Default: two parts are the sides of a finished bait, each seen with the other behind it. */
  apart: z.boolean().exactOptional(),
  /** Of a target of one part; of several each says its own. */
  flake: targetFlake.exactOptional(),
  plastic: reference.exactOptional(),
  /** What it does beside being of a colour: materials that do so too may be proposed for it. */
  effect: effect.exactOptional(),
  mold: reference.exactOptional(),
  tolerance: positive.exactOptional(),
  publish: publish.exactOptional(),
  photo: photo.exactOptional(),
});

/** Schema of each kind. */
export const SCHEMAS = {
  book: bookSchema,
  recipe: recipeSchema,
  chip: chipSchema,
  colorant: colorantSchema,
  powder: powderSchema,
  flake: flakeSchema,
  plastic: plasticSchema,
  additive: additiveSchema,
  mold: moldSchema,
  target: targetSchema,
} as const satisfies Readonly<Record<Kind, z.ZodObject>>;

/** Front matter of each kind after reading. */
export type FieldsOf<K extends keyof typeof SCHEMAS> = z.output<(typeof SCHEMAS)[K]>;
