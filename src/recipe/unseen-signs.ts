/**
 * Signs of a text that nobody sees, or that turn the letters beside them round: what is read is not what is written then.
 *
 * By the Unicode Standard, 16.0: chapter 23.2 (layout controls), UAX #9 (turning signs), and general categories Cc and Cs. From memory.
 *
 * @packageDocumentation
 */

/** A sign and where it stands, in UTF-16 units. */
export interface UnseenSign {
  readonly at: number;
  readonly sign: string;
  readonly kind: 'control' | 'turning' | 'invisible';
}

const CONTROL = String.raw`[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u2028\u2029]|\p{Cs}`;
const TURNING = String.raw`[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\u206a-\u206f]`;
const INVISIBLE = String.raw`[\u00ad\u034f\u115f\u1160\u180e\u200b-\u200d\u2060-\u2065\u2800\u3164\ufe00-\ufe0f\ufeff\uffa0\ufff9-\ufffb\u{e0000}-\u{e0fff}]`;
const ANY = new RegExp(`(${CONTROL})|(${TURNING})|(${INVISIBLE})`, 'gu');

const LETTER = String.raw`[\p{L}\p{M}]`;
const PICTURE = String.raw`[\p{Extended_Pictographic}\p{Emoji_Modifier}\p{Regional_Indicator}\ufe0f\u20e3]`;
const FLAG_TAG = String.raw`[\u{e0020}-\u{e007f}]`;
// Marks of direction move nothing where nothing is written from right to left.
const RIGHT_TO_LEFT = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;

/** Where a sign that is not seen does its work, by what stands before and after it. */
const AT_WORK: readonly { readonly sign: RegExp; readonly before: RegExp; readonly after: RegExp }[] = [
  // Joiners: between letters, and in emoji of several pictures.
  { sign: /[\u034f\u200c\u200d]/u, before: new RegExp(`${LETTER}$`, 'u'), after: new RegExp(`^${LETTER}`, 'u') },
  { sign: /\u200d/u, before: new RegExp(`${PICTURE}$`, 'u'), after: /^[\p{Extended_Pictographic}♀♂⚕]/u },
  // Where a word may be broken: anywhere in a word, and between the words of scripts that are written without spaces.
  { sign: /\u00ad/u, before: /\p{L}$/u, after: /^\p{L}/u },
  {
    sign: /[\u200b\u2060]/u,
    before: /[\p{Script=Thai}\p{Script=Lao}\p{Script=Khmer}\p{Script=Myanmar}\p{Script=Tibetan}]$/u,
    after: /^\p{L}/u,
  },
  // How a sign is to look, and which flag is meant.
  { sign: /[\ufe00-\ufe0f\u{e0100}-\u{e01ef}]/u, before: /[^\s\p{C}]$/u, after: /^/u },
  { sign: new RegExp(FLAG_TAG, 'u'), before: new RegExp(`\\u{1f3f4}${FLAG_TAG}*$`, 'u'), after: /^/u },
];

/** The longest flag has a flag and seven tags, of two units each. */
const CONTEXT = 16;

/** Every sign of a text that is not seen and does no work there, in the order of the text. Line ends and tabs are seen. */
export function unseenSigns(text: string): readonly UnseenSign[] {
  const rightToLeft = RIGHT_TO_LEFT.test(text);
  return [...text.matchAll(ANY)].flatMap(({ 0: sign, 1: control, 2: turning, index: at }): readonly UnseenSign[] => {
    if (control !== undefined) return [{ at, sign, kind: 'control' }];
    if (turning !== undefined) {
      const mark = sign === '\u061c' || sign === '\u200e' || sign === '\u200f';
      return mark && rightToLeft ? [] : [{ at, sign, kind: 'turning' }];
    }
    const before = text.slice(Math.max(0, at - CONTEXT), at);
    const after = text.slice(at + sign.length, at + sign.length + CONTEXT);
    const atWork = AT_WORK.some((use) => use.sign.test(sign) && use.before.test(before) && use.after.test(after));
    return atWork ? [] : [{ at, sign, kind: 'invisible' }];
  });
}

/** A text without its unseen signs, and without those that did their work beside one of them. */
export function withoutUnseen(text: string): string {
  const signs = unseenSigns(text);
  if (signs.length === 0) return text;
  let kept = '';
  let from = 0;
  for (const { at, sign } of signs) {
    kept += text.slice(from, at);
    from = at + sign.length;
  }
  return withoutUnseen(kept + text.slice(from));
}

/** `U+200B` */
export function codeOf(sign: string): string {
  return `U+${sign.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`;
}
