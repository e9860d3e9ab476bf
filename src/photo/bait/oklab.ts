/**
 * OKLab of many pixels: numbers in, numbers out.
 *
 * Source: B. Ottosson, "A perceptual color space for image processing" (2020); digits as in culori, which derives them for the white of sRGB.
 *
 * @packageDocumentation
 */

/** Writes L, a and b of linear red, green and blue, at `at` and after it. Values outside 0..1 are taken as they are. */
export function writeOklab(r: number, g: number, b: number, out: Float32Array, at: number): void {
  const l = Math.cbrt(0.412221469470763 * r + 0.5363325372617348 * g + 0.0514459932675022 * b);
  const m = Math.cbrt(0.2119034958178252 * r + 0.6806995506452344 * g + 0.1073969535369406 * b);
  const s = Math.cbrt(0.0883024591900564 * r + 0.2817188391361215 * g + 0.6299787016738222 * b);
  out[at] = 0.210454268309314 * l + 0.7936177747023054 * m - 0.0040720430116193 * s;
  out[at + 1] = 1.9779985324311684 * l - 2.4285922420485799 * m + 0.450593709617411 * s;
  out[at + 2] = 0.0259040424655478 * l + 0.7827717124575296 * m - 0.8086757549230774 * s;
}

/** OKLab of every pixel of a picture in linear light, three numbers each. */
export function oklabOf(linear: Float32Array): Float32Array {
  const out = new Float32Array(linear.length);
  for (let at = 0; at < linear.length; at += 3) writeOklab(linear[at]!, linear[at + 1]!, linear[at + 2]!, out, at);
  return out;
}

/** Distance of two colours in OKLab, each of three numbers from its place on. */
export function oklabDistance(one: ArrayLike<number>, at: number, other: ArrayLike<number>, from: number): number {
  const l = one[at]! - other[from]!;
  const a = one[at + 1]! - other[from + 1]!;
  const b = one[at + 2]! - other[from + 2]!;
  return Math.sqrt(l * l + a * a + b * b);
}
