/**
 * What readers may have, field by field: of each kind of thing in the compiled book, and of each kind of file.
 *
 * Private is what tells of the maker's purse, shelf and bench rather than of a colour: prices, what a batch costs, what is left, what is
 * to be bought, and what to do with a cup that stands on the maker's bench. A new field is private until this table says otherwise: it
 * does not compile, or fails `tests/book/shared-fields.test.ts`, before it is named here.
 *
 * @packageDocumentation
 */

import type { Batch } from '../../cup/batch.ts';
import type { CupState } from '../../cup/ledger.ts';
import type { LearnedShelf } from '../../learning/learned-shelf.ts';
import type { WantedFlake } from '../../matching/substitutes/flake-match.ts';
import type { Flake } from '../../optics/flake.ts';
import type { LookDoubt } from '../../optics/look-doubt.ts';
import type { Chip } from '../model/chip.ts';
import type { Appearance, Colour, Lab, MeasuredBands } from '../model/colours.ts';
import type { Change, Content, Cup, PlasticShare, Round } from '../model/cup.ts';
import type { Known } from '../model/known.ts';
import type { Look } from '../model/looks.ts';
import type { Photo } from '../model/photo.ts';
import type { Recipe } from '../model/recipe.ts';
import type { Material, Mold } from '../model/shelf.ts';
import type { RecipeMatch, Target } from '../model/target.ts';
import type { Book } from '../model.ts';
import type { FieldTable } from './field-table.ts';

const LAB: FieldTable<Lab> = { L: 'shared', a: 'shared', b: 'shared' };

const COLOUR: FieldTable<Colour> = { lab: LAB, hex: 'shared', mapped: 'shared' };

const ASSUMPTION = { kind: 'shared', plastic: 'shared', mm: 'shared', gramsPerMl: 'shared', ml: 'shared' } as const;

const SPREAD_ADVICE = {
  kind: 'shared',
  tolerance: 'shared',
  remedy: 'shared',
  title: 'shared',
  deltaE: 'shared',
  enoughMl: 'shared',
  weigh: 'shared',
} as const;

const APPEARANCE: FieldTable<Appearance> = { overWhite: COLOUR, overBlack: COLOUR, contrastRatio: 'shared' };

const PHOTO: FieldTable<Photo> = { file: 'shared', caption: 'shared' };

const BANDS: FieldTable<MeasuredBands> = { overWhite: 'shared', overBlack: 'shared' };

const DOUBT: FieldTable<LookDoubt> = {
  means: 'shared',
  bound: 'shared',
  sd: 'shared',
  axisSd: 'shared',
  usual: 'shared',
};

/** What somebody saw is shared as what came of it is; what they own is not. */
const LOOK: FieldTable<Look> = {
  overWhite: COLOUR,
  overBlack: COLOUR,
  reflectance: BANDS,
  doubt: DOUBT,
  contrastDoubt: 'shared',
  note: 'shared',
  photo: PHOTO,
  camera: 'private',
  checked: 'shared',
  thicknessMm: 'shared',
  after: 'shared',
  wet: 'shared',
};

const KNOWN: FieldTable<Known> = { how: 'shared', looks: 'shared', flakeByFace: 'shared' };

const CONTENT: FieldTable<Content> = { material: 'shared', gramsPerMl: 'shared', spooned: 'shared' };

const PLASTIC: FieldTable<PlasticShare> = { material: 'shared', fraction: 'shared' };

const CHANGE: FieldTable<Change> = {
  deltaE: 'shared',
  deltaL: 'shared',
  deltaC: 'shared',
  deltaH: 'shared',
  deltaContrast: 'shared',
  words: 'shared',
  doses: { material: 'shared', from: 'shared', to: 'shared' },
};

const SOURCE: FieldTable<Recipe['source']> = { path: 'shared', text: 'shared' };

// The cuts of a cup that comes from a hidden one name what only that was mixed with.
const STATE: FieldTable<CupState> = { plastics: 'shared', materials: 'shared', cuts: 'private' };

const PARTS = { kind: 'shared', material: 'shared', ml: 'shared', grams: 'shared' } as const;

const ROUND: FieldTable<Round> = {
  number: 'shared',
  added: { material: 'shared', dose: 'shared', grams: 'shared', parts: PARTS },
  plasticAddedMl: 'shared',
  newCup: { plasticMl: 'shared', pouredAway: STATE, pouredAwayMl: 'shared' },
  unlogged: 'shared',
  pouredMl: 'shared',
  heatedTo: 'shared',
  burnt: 'shared',
  reheated: 'shared',
  heats: 'shared',
  newHeats: 'shared',
  heldMinutes: 'shared',
  note: 'shared',
  seen: { ...LOOK, predicted: APPEARANCE, missedBy: { overWhite: 'shared', overBlack: 'shared' } },
  cup: STATE,
  left: STATE,
  volumeMl: 'shared',
  leftMl: 'shared',
  look: APPEARANCE,
  change: CHANGE,
};

const CUP: FieldTable<Cup> = {
  name: 'shared',
  share: 'shared',
  from: { recipe: 'shared', cup: 'shared' },
  contents: CONTENT,
  plastics: PLASTIC,
  startMl: 'shared',
  startOf: 'private',
  volumePerPlastic: 'shared',
  written: { material: 'shared', dose: 'shared' },
  rounds: ROUND,
  naive: { contents: CONTENT, deltaE: 'shared', words: 'shared' },
  leftMl: 'shared',
  highestReached: 'shared',
  reheats: 'shared',
  heats: { heats: 'shared', borne: 'shared', heldMinutes: 'shared', heatedTo: 'shared', cooled: 'shared' },
  limit: { celsius: 'shared', material: 'shared', ofRange: 'shared' },
  limitUnknown: 'shared',
  working: { from: 'shared', to: 'shared' },
  body: APPEARANCE,
  thin: APPEARANCE,
  between: APPEARANCE,
  hidingMm: 'shared',
  flakes: {
    material: 'shared',
    hex: 'shared',
    sizeMm: 'shared',
    outline: 'shared',
    longMm: 'shared',
    finish: 'shared',
    flakesPerMl: 'shared',
    perBait: 'shared',
    spacingMm: 'shared',
    coverage: 'shared',
    seen: 'shared',
    contrast: 'shared',
  },
  tier: 'shared',
  known: KNOWN,
  assumptions: { title: 'shared', assumed: ASSUMPTION },
};

const BATCH: FieldTable<Batch> = {
  lines: { mold: 'shared', baits: 'shared', made: 'shared', shots: 'shared' },
  baits: 'shared',
  cups: {
    name: 'shared',
    split: 'shared',
    plastics: { material: 'shared', ml: 'shared' },
    amounts: {
      material: 'shared',
      cut: { id: 'shared', title: 'shared', oneIn: 'shared', with: 'shared', bottlePerGram: 'shared' },
      grams: 'shared',
      measuredGrams: 'shared',
      text: 'shared',
      tool: 'shared',
      byWeight: 'shared',
      offScale: 'shared',
      tooCoarse: { text: 'shared', grams: 'shared' },
      dropDeltaE: 'shared',
      betterWeighed: 'shared',
      nearInFullCup: 'shared',
      flakesABait: { mold: 'shared', count: 'shared' },
    },
    volumeMl: 'shared',
    fills: { mold: 'shared', shotMl: 'shared', shotsAFill: 'shared', fills: 'shared' },
    together: 'shared',
    measuringDeltaE: 'shared',
    byHandDeltaE: 'shared',
  },
  materials: {
    material: 'shared',
    grams: 'shared',
    ml: 'shared',
    cost: 'private',
    stockGrams: 'private',
    shortGrams: 'private',
    packs: 'private',
  },
  cost: 'private',
  costPerBait: 'private',
  unpriced: 'private',
};

const VERDICT_PART = { deltaE: 'shared', size: 'shared', towards: 'shared' } as const;

const MATCH: FieldTable<RecipeMatch> = {
  target: 'shared',
  tolerance: 'shared',
  cups: {
    cup: 'shared',
    part: 'shared',
    rounds: {
      number: 'shared',
      basis: 'shared',
      moved: 'shared',
      overWhite: COLOUR,
      overBlack: COLOUR,
      verdict: {
        overWhite: 'shared',
        overBlack: 'shared',
        deltaE: 'shared',
        within: 'shared',
        hue: VERDICT_PART,
        lightness: VERDICT_PART,
        vividness: VERDICT_PART,
        opacity: { ...VERDICT_PART, contrast: 'shared', target: 'shared', evened: 'shared' },
      },
    },
    lights: { basis: 'shared', views: { light: 'shared', name: 'shared', deltaE: 'shared' } },
    // Reckoned from the whole shelf and its prices, for a cup that only the maker has.
    next: 'private',
  },
};

const RECIPE: FieldTable<Omit<Recipe, 'batch'> & { readonly batch: Batch }> = {
  id: 'shared',
  title: 'shared',
  made: 'shared',
  pattern: 'shared',
  order: 'shared',
  mold: 'shared',
  streakMm: 'shared',
  publish: 'shared',
  tags: 'shared',
  notes: 'shared',
  photos: PHOTO,
  target: 'shared',
  match: MATCH,
  source: SOURCE,
  cups: CUP,
  seen: { ...LOOK, side: 'shared', rounds: { cup: 'shared', number: 'shared' } },
  body: APPEARANCE,
  thin: APPEARANCE,
  other: APPEARANCE,
  between: { body: APPEARANCE, thin: APPEARANCE, other: APPEARANCE },
  contrast: { deltaE: 'shared', suits: { swirl: 'shared', laminate: 'shared' } },
  lights: { light: 'shared', name: 'shared', body: APPEARANCE, deltaE: 'shared', words: 'shared' },
  water: { water: 'shared', type: 'shared', depthM: 'shared', hex: 'shared', lightLeft: 'shared' },
  facets: {
    hueFamilies: 'shared',
    lightness: 'shared',
    opacity: 'shared',
    materials: 'shared',
    flakeColours: 'shared',
    flakeSizes: 'shared',
  },
  batch: BATCH,
  repeatability: { bySpoonAndDrop: 'shared', byScale: 'shared', advice: SPREAD_ADVICE },
  tier: 'shared',
  known: KNOWN,
  spread: {
    expected: 'shared',
    bound: 'shared',
    fromMaterials: 'shared',
    fromMeasuring: 'shared',
    ends: 'shared',
  },
  parent: 'shared',
  changes: { cup: 'shared', fromRecipe: 'shared', fromCup: 'shared', change: CHANGE },
  children: 'shared',
  cupsFrom: 'shared',
  cupsIn: 'shared',
  family: 'shared',
};

const MATERIAL: FieldTable<Material> = {
  id: 'shared',
  kind: 'shared',
  title: 'shared',
  notes: 'shared',
  photos: PHOTO,
  constants: { absorption: 'shared', scattering: 'shared' },
  label: { absorption: 'shared', scattering: 'shared' },
  learnedFrom: 'shared',
  tier: 'shared',
  known: KNOWN,
  sure: { expected: 'shared', bound: 'shared' },
  expectedDeltaE: 'shared',
  fit: { films: 'shared', residual: 'shared', doses: 'shared', thicknesses: 'shared', mixtures: 'shared' },
  flake: {
    shape: 'shared',
    sizeMm: 'shared',
    filmMm: 'shared',
    density: 'shared',
    reflectance: 'shared',
    transmittance: 'shared',
    outline: 'shared',
    acrossMm: 'shared',
    longMm: 'shared',
    finish: 'shared',
    colour: 'shared',
    gramsPerFlake: 'shared',
  },
  hardness: 'shared',
  milky: 'shared',
  pearl: 'shared',
  use: 'shared',
  effect: 'shared',
  density: 'shared',
  gramsPerMl: 'shared',
  gramsPerDrop: 'shared',
  cuts: {
    id: 'shared',
    title: 'shared',
    notes: 'shared',
    of: 'shared',
    with: 'shared',
    oneIn: 'shared',
    gramsPerMl: 'shared',
    gramsPerDrop: 'shared',
    bottlePerGram: 'shared',
    plasticPerGram: 'shared',
    assumptions: ASSUMPTION,
    source: SOURCE,
  },
  price: 'private',
  // What stands on the bottle. Without it an additive's file could mean another thing: see `handlingOf`.
  pack: 'shared',
  packGrams: 'shared',
  byVolume: 'shared',
  byOunce: 'shared',
  stockGrams: 'private',
  highest: 'shared',
  bears: { from: 'shared', to: 'shared', usual: 'shared' },
  working: { from: 'shared', to: 'shared' },
  most: 'shared',
  typical: 'shared',
  assumptions: ASSUMPTION,
  hex: 'shared',
  learnedHex: 'shared',
  ladder: { gramsPerMl: 'shared', label: 'shared', look: APPEARANCE },
  usedIn: { recipe: 'shared', cup: 'shared', gramsPerMl: 'shared' },
  shared: 'private',
  source: SOURCE,
};

const MOLD: FieldTable<Mold> = {
  id: 'shared',
  title: 'shared',
  notes: 'shared',
  photos: PHOTO,
  cavities: 'shared',
  cavityMl: 'shared',
  sprueMl: 'shared',
  bodyMm: 'shared',
  thinMm: 'shared',
  thinPart: 'shared',
  gateMm: 'shared',
  lengthMm: 'shared',
  shape: 'shared',
  bag: 'shared',
  method: 'shared',
  manifold: 'shared',
  rejects: 'shared',
  usedIn: 'shared',
  shared: 'private',
  assumptions: ASSUMPTION,
  source: SOURCE,
};

const WANTED_FLAKE: FieldTable<WantedFlake> = { hex: 'shared', sizeMm: 'shared', coverage: 'shared', finish: 'shared' };

const TARGET: FieldTable<Target> = {
  id: 'shared',
  title: 'shared',
  notes: 'shared',
  publish: 'shared',
  publishSaid: 'private',
  photo: PHOTO,
  mold: 'shared',
  tolerance: 'shared',
  parts: {
    name: 'shared',
    overWhite: COLOUR,
    overBlack: COLOUR,
    reflectance: BANDS,
    thicknessMm: 'shared',
    doubt: DOUBT,
    contrastDoubt: 'shared',
    after: 'shared',
    camera: 'private',
    // As of looks that are published: see `learningData`.
    cameraNumber: 'shared',
    wet: 'shared',
    flakes: WANTED_FLAKE,
    // Of the shelf readers have what published recipes are made with.
    plastic: 'private',
  },
  apart: 'shared',
  effect: 'shared',
  // A question to the maker.
  unlikeSides: 'private',
  flakes: WANTED_FLAKE,
  recipes: 'shared',
  shared: 'private',
  source: SOURCE,
};

const CHIP: FieldTable<Chip> = {
  id: 'shared',
  title: 'shared',
  made: 'shared',
  publish: 'shared',
  notes: 'shared',
  rounds: {
    number: 'shared',
    contents: CONTENT,
    cuts: { material: 'shared' },
    plastics: PLASTIC,
    seen: { ...LOOK, thicknessMm: 'shared' },
    note: 'shared',
  },
  source: SOURCE,
};

const CONSTANTS = { absorption: 'shared', scattering: 'shared' } as const;

const OPTICAL_FLAKE: FieldTable<Flake> = {
  shape: 'shared',
  sizeMm: 'shared',
  filmMm: 'shared',
  density: 'shared',
  reflectance: 'shared',
  transmittance: 'shared',
};

/** Of published looks alone, and of materials that readers have: see `publishedBook`. */
const LEARNED: FieldTable<LearnedShelf> = {
  data: {
    materials: {
      id: 'shared',
      // Of every kind of prior all that its file says.
      prior: { kind: 'shared', typical: 'shared', constants: CONSTANTS, doubt: CONSTANTS, flake: OPTICAL_FLAKE },
      labels: {
        dose: 'shared',
        thicknessMm: 'shared',
        overWhite: LAB,
        overBlack: LAB,
        axisSd: 'shared',
        // A number: see `learningData`.
        camera: 'shared',
      },
    },
    looks: {
      key: 'shared',
      cup: 'shared',
      round: 'shared',
      layers: { plastics: 'shared', contents: 'shared', thicknessMm: 'shared' },
      streaks: 'shared',
      streakMm: 'shared',
      overWhite: LAB,
      overBlack: LAB,
      axisSd: 'shared',
      means: 'shared',
      // A number: see `learningData`.
      camera: 'shared',
      checked: 'shared',
    },
  },
  theta: 'shared',
  weights: { looks: 'shared', looksAlone: 'shared', cups: 'shared', labels: 'shared' },
  optics: { backings: { white: 'shared', black: 'shared' }, path: { d: 'shared', s0: 'shared' }, crowding: 'shared' },
  constants: 'shared',
};

/** What readers may have of a book. Looks are not in it: `lookOnly` says what there is of them. */
export const SHARED_FIELDS: FieldTable<Omit<Book, 'looks' | 'recipes' | 'readers'>> & {
  readonly recipes: typeof RECIPE;
} = {
  format: 'shared',
  edition: 'shared',
  title: 'shared',
  maker: 'shared',
  address: 'shared',
  foreword: 'shared',
  settings: {
    drops: 'shared',
    spoons: { ml: 'shared', name: 'shared' },
    scaleGrams: 'shared',
    dropSpread: 'shared',
    spoonSpread: 'shared',
    loss: 'shared',
    lossByMethod: 'shared',
    rejects: 'shared',
    injector: { holdsMl: 'shared', leftMl: 'shared' },
    leftInCupMl: 'shared',
    marksMl: 'shared',
    cupMl: 'shared',
    fill: 'shared',
    tolerance: 'shared',
    volume: 'shared',
    temperature: 'shared',
    currency: 'shared',
    plastic: 'shared',
  },
  // Of the maker's own print: a reader's has other values.
  measuringCard: 'private',
  // What cameras are called is nobody's business.
  cameraNumbers: 'private',
  // The cards and the light of the maker's bench are in every colour that is shared.
  optics: { backings: { white: 'shared', black: 'shared' }, path: { d: 'shared', s0: 'shared' }, crowding: 'shared' },
  recipes: RECIPE,
  chips: CHIP,
  materials: MATERIAL,
  molds: MOLD,
  targets: TARGET,
  families: {
    id: 'shared',
    title: 'shared',
    members: 'shared',
    edges: { from: 'shared', to: 'shared', kind: 'shared', label: 'shared' },
  },
  learned: LEARNED,
  // Whoever reads has what was learned of it.
  doubted: 'private',
};
