/**
 * Whether a file is a picture of a format that every browser shows, told by what is in it, whatever its name says.
 *
 * @packageDocumentation
 */
import type { PhotoFault } from './check-photos.ts';

const EXPECTED = 'a JPEG, PNG or WebP picture';
const AGAIN = 'copy it from the camera or phone again';
const RESAVE = 'open it and save or export it as JPEG';

/** A picture that cannot be decoded, with what was said of it. */
export function damagedPicture(said: string): PhotoFault {
  return {
    found: `a picture that is damaged, or not whole (${said})`,
    expected: `${EXPECTED} that is whole`,
    fix: AGAIN,
    orRemove: true,
  };
}

const OTHERS: readonly (readonly [pattern: RegExp, name: string])[] = [
  [/^GIF8[79]a/, 'a GIF'],
  [/^(?:II\*\0|MM\0\*)/, 'a TIFF or raw picture'],
  [/^BM/, 'a BMP picture'],
  [/^%PDF/, 'a PDF'],
  [/^....ftypavi[fs]/s, 'an AVIF picture'],
];

// Brands of the High Efficiency Image File Format, ISO/IEC 23008-12; from memory.
const HEIC = /^....ftyp(?:hei[cxms]|hev[cxms]|mif1|msf1)/s;
const MARKUP = /^\s*(?:\u00ef\u00bb\u00bf)?\s*<(?:\?xml|!doctype|!--|svg|html)/i;

/** What a file is that is none of the formats of a photo, by its first bytes; undefined of one that is. */
export function formatFault(original: Uint8Array): PhotoFault | undefined {
  const head = String.fromCharCode(...original.subarray(0, 256));
  if (['\xff\xd8\xff', '\x89PNG\r\n\x1a\n'].some((begin) => head.startsWith(begin)) || /^RIFF....WEBP/s.test(head))
    return undefined;
  if (original.length === 0) {
    return { found: 'an empty file', expected: EXPECTED, fix: AGAIN, orRemove: true };
  }
  if (HEIC.test(head)) {
    return {
      found: 'a HEIC picture',
      expected: EXPECTED,
      why: 'most browsers cannot show HEIC, whatever the name of the file ends in',
      fix: 'open it on the phone or computer and export or save it as JPEG; for the next ones, set the format in the settings of the phone’s camera to JPEG, often called “most compatible”',
    };
  }
  if (MARKUP.test(head)) {
    return {
      found: 'a drawing or web page (SVG, HTML)',
      expected: EXPECTED,
      why: 'it could hold a program',
      fix: RESAVE,
      orRemove: true,
    };
  }
  const other = OTHERS.find(([pattern]) => pattern.test(head))?.[1];
  return other === undefined
    ? {
        found: 'a file that is no picture',
        expected: EXPECTED,
        fix: 'put the picture in its place',
        orRemove: true,
      }
    : { found: other, expected: EXPECTED, why: 'the site shows no other formats', fix: RESAVE, orRemove: true };
}
