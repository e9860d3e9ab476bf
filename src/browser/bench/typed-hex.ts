import { isHex } from '../../optics/display.ts';

/** `#rrggbb` of six digits that were typed, with or without their sign; undefined where they are no colour. */
export function typedHex(text: string): string | undefined {
  const hex = `#${text.trim().replace(/^#/, '').toLowerCase()}`;
  return hex.length === 7 && isHex(hex) ? hex : undefined;
}
