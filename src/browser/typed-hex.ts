/** `#rrggbb` of what was typed, with or without its sign; undefined where it is no colour. */
export function typedHex(text: string): string | undefined {
  const digits = /^#?([0-9a-f]{6})$/i.exec(text.trim())?.[1];
  return digits && `#${digits.toLowerCase()}`;
}

/** A colour that is none, in a sentence. */
export function noColour(typed: string): string {
  return `“${typed}” isn’t a colour code. Type # and six digits, like #8a6a44.`;
}
