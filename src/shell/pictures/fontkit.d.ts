/** The part of the package that is used; it has no types of its own. */
declare module 'fontkit' {
  interface Glyph {
    readonly path: { toSVG(): string };
  }

  interface Font {
    readonly unitsPerEm: number;
    hasGlyphForCodePoint(codePoint: number): boolean;
    layout(text: string): {
      readonly glyphs: readonly Glyph[];
      readonly positions: readonly { readonly xAdvance: number; readonly xOffset: number; readonly yOffset: number }[];
    };
  }

  export function create(font: Buffer): Font;
}
