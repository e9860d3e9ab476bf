/**
 * Whether the colour profile of a picture is Display P3, by what is in it: profiles of one space have many names.
 *
 * Source: ICC.1:2022 (the profile format: a header of 128 bytes, then tags of signature, offset and size, 12 bytes each, big-endian;
 * `XYZ ` and `para` types), and SMPTE EG 432-1 with the D65 white and the curve of IEC 61966-2-1 for Display P3; from memory.
 *
 * @packageDocumentation
 */
import { linearOfCoded } from '../tables/srgb.ts';

const HEADER = 128;
const TAG = 12;
const MOST_TAGS = 100;

/** XYZ of the primaries, brought to D50 as a profile has them (Bradford). From memory; `tests/shell/read-pixels.test.ts` reckons them. */
export const P3_PRIMARIES: Readonly<Record<'rXYZ' | 'gXYZ' | 'bXYZ', readonly [number, number, number]>> = {
  rXYZ: [0.5151, 0.2412, -0.0011],
  gXYZ: [0.292, 0.6922, 0.0419],
  bXYZ: [0.1571, 0.0666, 0.7841],
};

/** Profiles round to 1/65536, and makers by more. The primaries of sRGB are 0.08 away. */
const PRIMARY_TOLERANCE = 0.002;

/** How far a profile's curve may be from that of sRGB: a step of a byte where it is steepest. Tables of few points are rougher. */
const CURVE_TOLERANCE = 0.01;
const CURVE_POINTS = 33;

/** Whether a profile is Display P3. What cannot be read isn't. */
export function isDisplayP3(profile: Uint8Array): boolean {
  const view = new DataView(profile.buffer, profile.byteOffset, profile.byteLength);
  const tags = tagsOf(view);
  const hasPrimaries = Object.entries(P3_PRIMARIES).every(([name, wanted]) => {
    const at = tags.get(name);
    if (at === undefined || textAt(view, at) !== 'XYZ ') return false;
    return wanted.every((value, i) => Math.abs(fixedAt(view, at + 8 + 4 * i) - value) < PRIMARY_TOLERANCE);
  });
  return hasPrimaries && ['rTRC', 'gTRC', 'bTRC'].every((name) => isSrgbCurve(view, tags.get(name)));
}

/** Where each tag's data begin; only those that lie within the profile. */
function tagsOf(view: DataView): ReadonlyMap<string, number> {
  if (view.byteLength < HEADER + 4) return new Map();
  const count = Math.min(view.getUint32(HEADER), MOST_TAGS, Math.floor((view.byteLength - HEADER - 4) / TAG));
  const tags = Array.from({ length: count }, (_, tag) => {
    const at = HEADER + 4 + TAG * tag;
    return [textAt(view, at), view.getUint32(at + 4), view.getUint32(at + 8)] as const;
  });
  // XYZ has 20 bytes; how long a curve is, it says itself.
  return new Map(
    tags.flatMap(([name, offset, size]) =>
      size >= 14 && offset + 20 <= view.byteLength && offset + size <= view.byteLength ? [[name, offset] as const] : [],
    ),
  );
}

function isSrgbCurve(view: DataView, at: number | undefined): boolean {
  const curve = at === undefined ? undefined : curveAt(view, at);
  if (curve === undefined) return false;
  return Array.from({ length: CURVE_POINTS }, (_, i) => i / (CURVE_POINTS - 1)).every(
    (coded) => Math.abs(curve(coded) - linearOfCoded(coded)) < CURVE_TOLERANCE,
  );
}

/** A curve of a profile, by its five numbers or by its table; undefined of any other. */
function curveAt(view: DataView, at: number): ((coded: number) => number) | undefined {
  const type = textAt(view, at);
  if (type === 'para' && view.getUint16(at + 8) === 3 && at + 32 <= view.byteLength) {
    const [g, a, b, c, d] = [0, 1, 2, 3, 4].map((i) => fixedAt(view, at + 12 + 4 * i)) as Five;
    return (coded) => (coded >= d ? (a * coded + b) ** g : c * coded);
  }
  const count = view.getUint32(at + 8);
  if (type !== 'curv' || count < 2 || at + 12 + 2 * count > view.byteLength) return undefined;
  const entry = (i: number): number => view.getUint16(at + 12 + 2 * i) / 65_535;
  return (coded) => {
    const before = Math.min(count - 2, Math.floor(coded * (count - 1)));
    const part = coded * (count - 1) - before;
    return entry(before) * (1 - part) + entry(before + 1) * part;
  };
}

type Five = [number, number, number, number, number];

const textAt = (view: DataView, at: number): string =>
  String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));

/** s15Fixed16Number. */
const fixedAt = (view: DataView, at: number): number => view.getInt32(at) / 65_536;
