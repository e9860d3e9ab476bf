import type { BatchAmounts } from '../../cup/batch.ts';
import type { Tier } from '../../optics/material-constants.ts';
import type { PatternContrast } from '../../optics/pattern-contrast.ts';
import type { CoreOrder } from '../../patterns/pattern.ts';
import type { Pattern } from '../../patterns/patterns.ts';
import type { OpacityWord } from '../../tables/opacity-classes.ts';
import type { Appearance } from './colours.ts';
import type { Change, Cup } from './cup.ts';
import type { Known } from './known.ts';
import type { BaitLook } from './looks.ts';
import type { Photo } from './photo.ts';
import type { Publish } from './publish.ts';
import type { Mold } from './shelf.ts';
import type { RecipeMatch } from './target.ts';

/** How far a bait may be from the colour that is shown, ΔE00, of the view over white or over black that is farther off. */
export interface Spread {
  /** To be expected: the mean of all baits. */
  readonly expected: number;
  /** Nine in ten stay within this. */
  readonly bound: number;
  /** The bound, were only the colour in doubt that these doses give. */
  readonly fromMaterials: number;
  /** The bound, were only the measuring of the doses in doubt. */
  readonly fromMeasuring: number;
  /** Over white, `#rrggbb`: the darker and the lighter colour between which nine in ten lie along each of two axes, widest first. */
  readonly ends: readonly (readonly [string, string])[];
}

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

/** A recipe with everything that is computed of it. */
export interface Recipe {
  readonly id: string;
  readonly title: string;
  readonly made?: string;
  readonly pattern: Pattern;
  /** Which cup of a bait with a core goes into the mold first, where the recipe says. */
  readonly order?: CoreOrder;
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
  /** How the colour of the side looked at is known. */
  readonly known: Known;
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

/** What a colour is found by on the wall and in Find. */
export interface Facets {
  /** brown, green, … of the body over white; of each cup, the largest first and a clear one last, where they are seen side by side. The first is where it hangs on the wall. */
  readonly hueFamilies: readonly string[];
  readonly lightness: 'dark' | 'medium' | 'light';
  readonly opacity: OpacityWord;
  readonly materials: readonly string[];
  readonly flakeColours: readonly string[];
  /** As printed on the bag: `0.040 in`. */
  readonly flakeSizes: readonly string[];
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
