/** CIELAB under D65, 2° observer. */
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
