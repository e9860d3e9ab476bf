/**
 * The compiled book: a plain, immutable value that survives `JSON.stringify` unchanged.
 *
 * Units: ml, g, mm, °C; doses in grams of material per millilitre of plastic (g/ml); shares as fractions of 1;
 * colours as CIELAB under D65 (1931 2° observer) and as sRGB `#rrggbb`; spectra as 36 numbers, 380 to 730 nm.
 * Absent is `undefined`, never null, so that a field that is missing in the JSON means the same.
 *
 * @packageDocumentation
 */

import type { LogRound } from '../cup/cup-log.ts';
import type { HeatLimit } from '../cup/heat-limit.ts';
import type { HowLooked } from '../cup/how-looked.ts';
import type { CupState } from '../cup/ledger.ts';
import type { BatchAmounts, Shop } from '../cup/plan-batch.ts';
import type { MaterialKind } from '../kinds/kinds.ts';
import type { NextAddition } from '../matching/next-addition.ts';
import type { Verdict } from '../matching/target/verdict.ts';
import type { Flake } from '../optics/flake.ts';
import type { LookDoubt } from '../optics/look-doubt.ts';
import type { Tier } from '../optics/material-constants.ts';
import type { PatternContrast } from '../optics/pattern-contrast.ts';
import type { Pattern } from '../patterns/patterns.ts';
import type { OpacityWord } from '../tables/opacity-classes.ts';

export type { Batch, BatchAmounts, BatchCup, BatchMaterial, Measured, Shop } from '../cup/plan-batch.ts';

export type { Tier };

/** What is published of a thing. */
export type Publish = 'full' | 'look' | 'no';

/** For whom a book is: what readers may have of it, or the maker's own copy, with everything in it. */
export type Edition = 'shared' | 'mine';

export interface Lab {
  readonly L: number;
  readonly a: number;
  readonly b: number;
}

/** One colour: seen, measured or computed. */
export interface Colour {
  readonly lab: Lab;
  /** Nearest colour that a screen shows. */
  readonly hex: string;
  /** Whether the screen cannot show the colour itself. */
  readonly mapped: boolean;
}

/** A translucent thing over the book's white and over its black, as the model has it. */
export interface Appearance {
  readonly overWhite: Colour;
  readonly overBlack: Colour;
  /** Y over black by Y over white, 0 clear to 1 hiding. */
  readonly contrastRatio: number;
}

/** What was measured band by band: 0..1, 380 to 730 nm by 10, beside the gloss. */
export interface MeasuredBands {
  readonly overWhite?: readonly number[];
  readonly overBlack?: readonly number[];
}

/** What somebody saw: of a cup that was poured by itself, or of a finished bait. */
export interface Look extends HowLooked {
  readonly overWhite?: Colour;
  readonly overBlack?: Colour;
  readonly reflectance?: MeasuredBands;
  /** How far its colours may be off; absent where none is noted. */
  readonly doubt?: LookDoubt;
  /** Nine in ten looks of this kind have their contrast ratio within this; absent where nobody has said. */
  readonly contrastDoubt?: number;
  readonly note?: string;
  readonly photo?: Photo;
  /** What took the photo. */
  readonly camera?: string;
}

/** A look at a cup that was poured by itself. */
export interface CupLook extends Look {
  /** What the model makes of the cup at its thickness; absent where that is the body's, so that the round has it. */
  readonly predicted?: Appearance;
  /** How far the prediction at its thickness was from it, ΔE00. */
  readonly missedBy?: { readonly overWhite?: number; readonly overBlack?: number };
}

/** A look at a finished bait. */
export interface BaitLook extends Look {
  /** The cup that faced the eye; absent: the first. */
  readonly side?: string;
  /** The rounds of the cups that it was poured after; of a cup that is not named, nobody has said. */
  readonly rounds?: readonly { readonly cup: string; readonly number: number }[];
}

/** What flake does in a cup at a thickness. */
export interface FlakeLook {
  readonly material: string;
  readonly hex: string;
  /** Size across flats, mm. */
  readonly sizeMm: number;
  readonly outline: FlakeProperties['outline'];
  /** Length of a strip, mm. */
  readonly longMm?: number;
  readonly finish: string;
  readonly flakesPerMl: number;
  /** Flakes of the cup in one bait of the recipe's mold: in its share of the cavity. */
  readonly perBait: number;
  /** Mean distance between neighbours, mm. */
  readonly spacingMm: number;
  /** Chance that a line of sight through the body meets one. */
  readonly coverage: number;
}

/** One material in a cup. */
export interface Content {
  readonly material: string;
  /** g per ml of plastic. */
  readonly gramsPerMl: number;
}

/** One plastic in a cup, as a share of the plastic's volume. */
export interface PlasticShare {
  readonly material: string;
  readonly fraction: number;
}

/** One trial of a cup, as its log has it; and what the model makes of it. */
export interface Round extends Omit<LogRound<Look>, 'first' | 'looked' | 'pouredAway' | 'seen'> {
  /** It is the first of a new cup: with how much plastic that was begun, and what was left of the one before. */
  readonly newCup?: { readonly plasticMl: number; readonly pouredAway: CupState; readonly pouredAwayMl: number };
  /** How it was seen, the look that it is judged by first; see `judgedFirst`. */
  readonly seen: readonly CupLook[];
  /** It was heated until vinyl breaks down. */
  readonly burnt?: true;
  /** Of all that is in it, before the pour and after. */
  readonly volumeMl: number;
  readonly leftMl: number;
  /** Predicted, at the thickness of the body. */
  readonly look: Appearance;
  /** Change from the round before: ΔE00 over white, and in words. */
  readonly change?: Change;
}

/** What changed between two cups, rounds or recipes. */
export interface Change {
  readonly deltaE: number;
  readonly deltaL: number;
  readonly deltaC: number;
  readonly deltaH: number;
  /** Change of contrast ratio; above zero it hides more. */
  readonly deltaContrast: number;
  /** "darker, browner, thicker" */
  readonly words: readonly string[];
  /** Exact change of every dose, g per 100 ml of plastic. */
  readonly doses: readonly { readonly material: string; readonly from: number; readonly to: number }[];
}

export interface Cup {
  readonly name: string;
  /** Share of the bait. */
  readonly share: number;
  readonly from?: { readonly recipe: string; readonly cup: string };
  /** Repeatable recipe: what is really in the cup. */
  readonly contents: readonly Content[];
  readonly plastics: readonly PlasticShare[];
  /** Plastic that its file begins with, ml. */
  readonly startMl: number;
  /** The cup whose file states `startMl`, where this one's does not. */
  readonly startOf?: { readonly recipe: string; readonly cup: string };
  /** Mixed volume of one ml of plastic with everything in it, ml. */
  readonly volumePerPlastic: number;
  /** The amounts as the maker wrote them, if the cup has no log. */
  readonly written: readonly { readonly material: string; readonly dose: string }[];
  readonly rounds: readonly Round[];
  /** Only with a log: what the notes add up to, and how far that is from the cup. */
  readonly naive?: {
    readonly contents: readonly Content[];
    readonly deltaE: number;
    readonly words: readonly string[];
  };
  /** Volume that the log leaves, ml. */
  readonly leftMl?: number;
  readonly highestReached?: number;
  readonly reheats: number;
  /** How hot it may get, as `heatLimit` says. */
  readonly limit?: HeatLimit;
  /** Materials of the cup whose highest temperature is not on the shelf. */
  readonly limitUnknown: readonly string[];
  /** Pouring range that all its plastics share. */
  readonly working?: { readonly from: number; readonly to: number };
  /** Alone, at the thickness of the body and of the thin part. */
  readonly body: Appearance;
  readonly thin: Appearance;
  /** The plastic's colour without its flake. */
  readonly between: Appearance;
  /** Thickness at which the contrast ratio reaches 0.98, mm; absent where none does. */
  readonly hidingMm?: number;
  readonly flakes: readonly FlakeLook[];
  readonly tier: Tier;
  /** What the numbers assume, of which material. */
  readonly assumptions: readonly { readonly title: string; readonly assumed: Assumption }[];
}

/** How far a bait may be from its predicted colour, ΔE00, of the view over white or over black that varies more. */
export interface Spread {
  /** Half of all baits stay within this. */
  readonly expected: number;
  /** Nine in ten stay within this. */
  readonly bound: number;
  /** The bound, were only the materials in doubt. */
  readonly fromMaterials: number;
  /** The bound, were only the measuring of the doses in doubt. */
  readonly fromMeasuring: number;
  /** Over white, `#rrggbb`: the darker and the lighter colour between which nine in ten lie along each of two axes, widest first. */
  readonly ends: readonly (readonly [string, string])[];
}

/** What a number of the book rests on where nobody measured it. */
export type Assumption =
  /** A plastic absorbs and scatters as one of its kind usually does. */
  | { readonly kind: 'typical-plastic'; readonly plastic: string }
  /** An additive does not change the colour. */
  | { readonly kind: 'no-colour' }
  /** How strongly it colours is known from one colour and its kind. */
  | { readonly kind: 'strength' }
  /** The film of a flake is as thick as most. */
  | { readonly kind: 'film'; readonly mm: number }
  | { readonly kind: 'density'; readonly gramsPerMl: number }
  /** What a level millilitre weighs. */
  | { readonly kind: 'bulk'; readonly gramsPerMl: number }
  | { readonly kind: 'drop'; readonly ml: number }
  /** An additive is taken for a liquid, or for salt. */
  | { readonly kind: 'liquid' }
  | { readonly kind: 'salt' }
  /** The cavity of a mold is known from the mass of a bait. */
  | { readonly kind: 'cavity'; readonly gramsPerMl: number }
  | { readonly kind: 'no-sprue' };

/** What mends it where batches come out too far apart. */
export type SpreadAdvice =
  /** Drops and spoons vary by more than the tolerance, ΔE00. */
  | {
      readonly kind: 'hands-vary';
      readonly tolerance: number;
      readonly remedy: 'get-a-scale' | 'weigh' | 'larger-batch';
    }
  /** One drop moves the colour by so much, ΔE00: a cup of so much plastic bears it, ml, or it is weighed, alone or with all of its cup. */
  | {
      readonly kind: 'drop';
      readonly title: string;
      readonly deltaE: number;
      readonly enoughMl?: number;
      readonly weigh?: 'it' | 'all';
    };

/** Made again with the bench's tools: largest ΔE00 in 19 of 20 batches. */
export interface Repeatability {
  readonly bySpoonAndDrop?: number;
  readonly byScale?: number;
  /** What mends it where one drop, or the spread, is more than the tolerance. */
  readonly advice?: readonly SpreadAdvice[];
}

export interface Photo {
  /** Path in the book's folder, `photos/…`. */
  readonly file: string;
  readonly caption?: string;
}

export interface Recipe {
  readonly id: string;
  readonly title: string;
  readonly made?: string;
  readonly pattern: Pattern;
  readonly mold: string;
  /** Width of a streak, where the recipe says. */
  readonly streakMm?: number;
  readonly publish: Publish;
  readonly tags: readonly string[];
  /** Markdown. */
  readonly notes: string;
  readonly photos: readonly Photo[];
  readonly target?: string;
  /** Beside its target, round by round; only where a part of the target is for one of its cups. */
  readonly match?: RecipeMatch;
  readonly source: { readonly path: string; readonly text: string };
  readonly cups: readonly Cup[];
  /** The finished bait as it was seen. */
  readonly seen?: readonly BaitLook[];
  /** The bait as a whole: the side looked at, over white and over black. */
  readonly body: Appearance;
  /** As its pattern has it: of what the body is of, or of one cup. */
  readonly thin: Appearance;
  /** What else is looked at by itself, such as the other side: the second of the `faces` of its pattern. */
  readonly other?: Appearance;
  /** The same views of the bait without its flake, to draw flake on. */
  readonly between: { readonly body: Appearance; readonly thin: Appearance; readonly other?: Appearance };
  /** Between the first two cups, as seen through a streak or a layer. */
  readonly contrast?: { readonly deltaE: number; readonly suits: PatternContrast['suits'] };
  /** The body under other lights than daylight, each colour relative to the white of its light. */
  readonly lights: readonly {
    readonly light: string;
    readonly name: string;
    readonly body: Appearance;
    /** Change from daylight to an eye used to the light: ΔE00, the larger of those over white and over black; and in words. */
    readonly deltaE: number;
    readonly words: readonly string[];
  }[];
  /** The body at depth; `type` is Jerlov's, or `stained`. `lightLeft` is the part of the daylight that gets there. */
  readonly water: readonly {
    readonly water: string;
    readonly type: string;
    readonly depthM: number;
    readonly hex: string;
    readonly lightLeft: number;
  }[];
  /** What readers search by. */
  readonly facets: Facets;
  /** A `Batch`, with costs and what is to be bought, in the maker's edition. */
  readonly batch: BatchAmounts;
  readonly repeatability: Repeatability;
  readonly tier: Tier;
  readonly spread: Spread;
  readonly parent?: string;
  /** What changed from the parent, cup by cup of the same name. */
  readonly changes: readonly {
    readonly cup: string;
    readonly fromRecipe: string;
    readonly fromCup: string;
    readonly change: Change;
  }[];
  readonly children: readonly string[];
  /** Recipes whose cups are used here, and that use cups of this one. */
  readonly cupsFrom: readonly string[];
  readonly cupsIn: readonly string[];
  readonly family: string;
}

export interface Facets {
  /** brown, green, … of the body over white; of each cup, the largest first, where they are seen side by side. */
  readonly hueFamilies: readonly string[];
  readonly lightness: 'dark' | 'medium' | 'light';
  readonly opacity: OpacityWord;
  readonly materials: readonly string[];
  readonly flakeColours: readonly string[];
  /** As printed on the bag: `0.040 in`. */
  readonly flakeSizes: readonly string[];
}

/** K and S of a material per mm and g/ml, of a plastic per mm. */
export interface Constants {
  readonly absorption: readonly number[];
  readonly scattering: readonly number[];
}

/** A step of a dose ladder: a material alone in clear plastic. */
export interface LadderStep {
  readonly gramsPerMl: number;
  readonly label: string;
  readonly look: Appearance;
}

/** A flake: what the optics needs of it (a `Flake`), and what a reader wants to know. */
export interface FlakeProperties extends Flake {
  readonly filmMm: number;
  readonly density: number;
  readonly transmittance: number;
  readonly reflectance: readonly number[];
  /** How it is cut; for the optics a strip is the square of the same area. */
  readonly outline: 'hexagon' | 'square' | 'round' | 'strip';
  /** Across flats, side, diameter, or width of a strip, mm. */
  readonly acrossMm: number;
  readonly longMm?: number;
  readonly finish: string;
  readonly colour: string;
  readonly gramsPerFlake: number;
}

export interface Material {
  readonly id: string;
  readonly kind: MaterialKind;
  readonly title: string;
  readonly notes: string;
  readonly photos: readonly Photo[];
  /** Absent for flake and for what does not colour. */
  readonly constants?: Constants;
  readonly tier: Tier;
  /** ΔE00 to expect of a mix of materials that are known as this one is. */
  readonly expectedDeltaE: number;
  /** How surely K and S are known: standard deviations of level, slope and bend of ln K and of ln S over the spectrum. */
  readonly doubt?: { readonly absorption: readonly number[]; readonly scattering: readonly number[] };
  /** Of a measured material: what its K and S rest on, and how well its films are met (root mean square ΔE00). */
  readonly fit?: {
    readonly films: number;
    readonly residual: number;
    /** Doses and thicknesses in which it was measured by itself, and mixtures with others. */
    readonly doses: number;
    readonly thicknesses: number;
    readonly mixtures: number;
  };
  readonly flake?: FlakeProperties;
  readonly hardness?: string;
  /** g/ml of the substance: what it adds to the cup's volume. */
  readonly density: number;
  /** g/ml as measured in a spoon. */
  readonly gramsPerMl: number;
  /** g; absent for what is not dropped. */
  readonly gramsPerDrop?: number;
  readonly price?: number;
  /** Size of a pack as its file has it: `1 l`. */
  readonly pack?: string;
  /** Whether it is bought and counted by volume, as its pack or else its stock is written; a plastic with neither is. */
  readonly byVolume: boolean;
  /** Whether it is bought and counted in ounces or pounds, as its pack or else its stock is written. */
  readonly byOunce: boolean;
  /** g */
  readonly packGrams?: number;
  /** g; 0 of what has run out, absent for what is not counted, which is taken to be there. */
  readonly stockGrams?: number;
  readonly highest?: number;
  readonly working?: { readonly from: number; readonly to: number };
  /** g per ml of plastic */
  readonly most?: number;
  /** Typical dose, g per ml of plastic. */
  readonly typical?: number;
  /** Which of the numbers are defaults, in words. */
  readonly assumptions: readonly Assumption[];
  /** Colour of its mark on pages. */
  readonly hex: string;
  readonly ladder: readonly LadderStep[];
  readonly usedIn: readonly { readonly recipe: string; readonly cup: string; readonly gramsPerMl: number }[];
  /** What readers have of it; only in the maker's edition. */
  readonly shared?: Publish;
  readonly source: { readonly path: string; readonly text: string };
}

export interface Mold {
  readonly id: string;
  readonly title: string;
  readonly notes: string;
  readonly photos: readonly Photo[];
  readonly cavities: number;
  /** ml */
  readonly cavityMl: number;
  readonly sprueMl: number;
  readonly bodyMm: number;
  readonly thinMm: number;
  readonly thinPart: string;
  readonly lengthMm?: number;
  readonly shape: 'minnow' | 'worm' | 'grub' | 'craw' | 'stick' | 'tube' | 'creature';
  readonly bag?: number;
  readonly usedIn: readonly string[];
  /** What readers have of it; only in the maker's edition. */
  readonly shared?: Publish;
  readonly assumptions: readonly Assumption[];
  readonly source: { readonly path: string; readonly text: string };
}

/** A colour to be matched. */
export interface Target {
  readonly id: string;
  readonly title: string;
  readonly notes: string;
  readonly publish: Publish;
  /** Whether its own file says what is published of it; else it is shared only where a recipe that is published in full is for it. */
  readonly publishSaid: boolean;
  readonly photo?: Photo;
  readonly mold?: string;
  readonly tolerance: number;
  /** One part named `body`, or the parts by the names of the cups. */
  readonly parts: readonly {
    readonly name: string;
    readonly overWhite: Colour;
    readonly overBlack?: Colour;
    readonly reflectance?: MeasuredBands;
    readonly thicknessMm: number;
  }[];
  /** Its parts were seen each by itself; else two parts are the sides of a finished bait, each seen with the other behind it. */
  readonly apart?: boolean;
  readonly flakes: readonly { readonly hex: string; readonly sizeMm: number; readonly coverage?: number }[];
  readonly recipes: readonly string[];
  /** What readers have of it; only in the maker's edition. */
  readonly shared?: Publish;
  readonly source: { readonly path: string; readonly text: string };
}

/** A recipe's cups beside the parts of its target. */
export interface RecipeMatch {
  readonly target: string;
  /** ΔE00 within which they are the same colour. */
  readonly tolerance: number;
  readonly cups: readonly CupMatch[];
}

/** A cup beside its part of the target. */
export interface CupMatch {
  readonly cup: string;
  readonly part: string;
  /** The rounds of its log; of a cup without a log, the cup itself. */
  readonly rounds: readonly MatchedRound[];
  /** How far the cup, as it was last, and the target are apart under other lights than daylight; absent without a round. */
  readonly lights?: CupLights;
  /** What to do with what is left in the cup; absent where the last round is within tolerance or nothing is left. */
  readonly next?: Omit<NextAddition, 'correction' | 'leftOut' | 'predictedDeltaE'>;
}

/** A cup beside its target under other lights. */
export interface CupLights {
  /** Whether the target's reflectance was measured; else the smoothest one of its colour stands for it, and the real one may differ. */
  readonly basis: 'measured' | 'estimated';
  /** ΔE00 under each light, the larger of those over white and over black. */
  readonly views: readonly { readonly light: string; readonly name: string; readonly deltaE: number }[];
}

/** A round beside the target. */
export interface MatchedRound {
  readonly number: number;
  /** Whether the colours are those noted, or the model's where none were. */
  readonly basis: 'seen' | 'predicted';
  /** Seen at another thickness than the target, or without the other side of the bait behind it, and moved to that by the model. */
  readonly moved?: 'thickness' | 'laminate';
  readonly overWhite?: Colour;
  readonly overBlack?: Colour;
  readonly verdict: Verdict;
}

/** Recipes that are tied by derivation or by cups, with the places of a drawing. */
export interface Family {
  readonly id: string;
  readonly title: string;
  readonly members: readonly string[];
  readonly edges: readonly {
    readonly from: string;
    readonly to: string;
    readonly kind: 'recipe' | 'cup';
    readonly label: string;
  }[];
}

/** How the maker works, and how amounts are shown. */
export interface Settings extends Shop {
  readonly volume: 'ml' | 'fl oz';
  readonly temperature: '°C' | '°F';
  readonly currency: string;
  /** Largest difference that counts as the same colour, ΔE00. */
  readonly tolerance: number;
  /** The plastic meant where none is named, if the book says. */
  readonly plastic?: string;
}

export interface Book {
  /** Version of this layout; see `book.json` in the manual. */
  readonly format: 2;
  readonly edition: Edition;
  readonly title: string;
  readonly maker?: string;
  /** Address that the book is published at, ending in `/`. */
  readonly address?: string;
  /** Markdown. */
  readonly foreword: string;
  readonly settings: Settings;
  readonly recipes: readonly Recipe[];
  /** Recipes of which only the look is published; filled by `publishedBook`. */
  readonly looks: readonly RecipeLook[];
  readonly materials: readonly Material[];
  readonly molds: readonly Mold[];
  readonly targets: readonly Target[];
  readonly families: readonly Family[];
}

/** How much flake there is to see: none, little, or much of it. */
export type FlakeLoad = 'none' | 'light' | 'heavy';

/**
 * What is published of a recipe with `publish: look`: four colours, coarse on purpose, a word for its flake, and what follows from
 * these; see `lookOnly`.
 */
export interface RecipeLook {
  readonly id: string;
  readonly title: string;
  readonly pattern: Pattern;
  readonly shape: Mold['shape'];
  /** The side looked at; of cups beside one another the first by itself. */
  readonly body: Appearance;
  /** Only of a bait with one side. */
  readonly thin?: Appearance;
  /** Laminate and layered: the other side. Swirl and tipped: the second cup by itself. */
  readonly other?: Appearance;
  readonly flake: FlakeLoad;
  readonly facets: Pick<Facets, 'hueFamilies' | 'lightness' | 'opacity'>;
}
