import type { Cut } from '../../cup/cut.ts';
import type { HeatsBorne } from '../../cup/heats-borne.ts';
import type { AdditiveUse } from '../../kinds/additive-uses.ts';
import type { Effect } from '../../kinds/effects.ts';
import type { MaterialKind } from '../../kinds/kinds.ts';
import type { Flake } from '../../optics/flake.ts';
import type { Tier } from '../../optics/material-constants.ts';
import type { Method } from '../../patterns/methods.ts';
import type { ShapedMold } from '../../shapes/shaped-mold.ts';
import type { Appearance } from './colours.ts';
import type { Known } from './known.ts';
import type { Photo } from './photo.ts';
import type { Publish } from './publish.ts';

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

/** A dilution of a bottle, as it stands on the shelf. */
export interface ShelfCut extends Cut {
  readonly notes: string;
  readonly assumptions: readonly Assumption[];
  readonly source: { readonly path: string; readonly text: string };
}

/** Something on the shelf: a plastic, colorant, powder, flake or additive. */
export interface Material {
  readonly id: string;
  readonly kind: MaterialKind;
  readonly title: string;
  readonly notes: string;
  readonly photos: readonly Photo[];
  /** As the book's looks have taught them; absent for flake and for what does not colour. */
  readonly constants?: Constants;
  /** As its file has them. */
  readonly label?: Constants;
  /** How many looks there are at something with it in it; absent where there is none. */
  readonly learnedFrom?: number;
  readonly tier: Tier;
  /** How its colour by itself is known. */
  readonly known: Known;
  /** How far its typical dose may be from the colour that is believed, ΔE00: to be expected, and what nine in ten stay within. */
  readonly sure?: { readonly expected: number; readonly bound: number };
  /** ΔE00 to expect of a mix of materials that are known as this one is. */
  readonly expectedDeltaE: number;
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
  /** A plastic that never turns clear, however hot it gets. */
  readonly milky?: true;
  /** A powder of small plates that lie with the surface, and so shines where one looks along the light. */
  readonly pearl?: true;
  /** What an additive is for, if its file says. */
  readonly use?: AdditiveUse;
  /** What a colorant or powder does beside being of a colour. */
  readonly effect?: Effect;
  /** g/ml of the substance: what it adds to the cup's volume. */
  readonly density: number;
  /** g/ml as measured in a spoon. */
  readonly gramsPerMl: number;
  /** g; absent for what is not dropped. */
  readonly gramsPerDrop?: number;
  /** Its dilutions, for doses that are too small to measure. */
  readonly cuts?: readonly ShelfCut[];
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
  /** How many heats it bears, the one in which it goes in included. */
  readonly bears?: HeatsBorne;
  readonly working?: { readonly from: number; readonly to: number };
  /** g per ml of plastic */
  readonly most?: number;
  /** Typical dose, g per ml of plastic. */
  readonly typical?: number;
  /** Which of the numbers are defaults, in words. */
  readonly assumptions: readonly Assumption[];
  /** Colour of its mark on pages; as its ladder, of its file's figures as long as nobody has looked at anything with it. */
  readonly hex: string;
  /** Then, where it differs visibly: what the book believes of its typical dose since it has learned from others. */
  readonly learnedHex?: string;
  readonly ladder: readonly LadderStep[];
  readonly usedIn: readonly { readonly recipe: string; readonly cup: string; readonly gramsPerMl: number }[];
  /** What readers have of it; only in the maker's edition. */
  readonly shared?: Publish;
  readonly source: { readonly path: string; readonly text: string };
}

/** A mold, as far as amounts and colours depend on it. */
export interface Mold extends ShapedMold {
  readonly id: string;
  readonly title: string;
  readonly notes: string;
  readonly photos: readonly Photo[];
  readonly cavities: number;
  readonly cavityMl: number;
  readonly sprueMl: number;
  readonly thinPart: string;
  /** The narrowest way in. */
  readonly gateMm?: number;
  readonly bag?: number;
  /** How it is filled, if its file or its shape says. */
  readonly method?: Method;
  /** Part of a shot that its manifold gives the first of two cups; absent where that is half. */
  readonly manifold?: number;
  /** Of the baits that are made in it, the part that is thrown away; absent where the book's is. */
  readonly rejects?: number;
  readonly usedIn: readonly string[];
  /** What readers have of it; only in the maker's edition. */
  readonly shared?: Publish;
  readonly assumptions: readonly Assumption[];
  readonly source: { readonly path: string; readonly text: string };
}
