/** Names of the parts of the spectrum by their upper end, nm. Common practice, no source: the borders are soft. */
const PARTS: readonly (readonly [to: number, name: string])[] = [
  [450, 'violet'],
  [490, 'blue'],
  [570, 'green'],
  [590, 'yellow'],
  [620, 'orange'],
  [Number.POSITIVE_INFINITY, 'red'],
];

/** The name of a light's colour. */
export function lightName(nm: number): string {
  return PARTS.find(([to]) => nm < to)![1];
}

/** What a material does to light, in words; what it does less than a twentieth as much of is hardly done. */
export function lightWords(absorption: readonly number[], scattering: readonly number[]): string {
  const [K, S] = [Math.max(...absorption), Math.max(...scattering)];
  const absorbs = K < S / 20 ? 'hardly absorbs any light' : `absorbs ${peakWords(absorption)}`;
  const scatters = S < K / 20 ? 'hardly scatters any' : `scatters ${peakWords(scattering)}`;
  return `${absorbs}; ${scatters}`;
}

/** Where a spectrum of the book's 36 bands is largest and smallest, in words; that it is even where it hardly changes. */
export function peakWords(values: readonly number[]): string {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  if (!(most > 0)) return 'nothing anywhere';
  if (least / most > 0.85) return 'all colours of light about equally';
  const name = (value: number): string => {
    const nm = 380 + 10 * values.indexOf(value);
    return `${lightName(nm)} (${nm} nm)`;
  };
  return `${name(most)} most, ${name(least)} least`;
}
