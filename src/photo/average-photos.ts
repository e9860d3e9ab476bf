/**
 * Several photos of one bait: their mean, and how much of the doubt that takes away.
 *
 * What a phone does to every picture, and what is not known of a card, is the same in all of its photos: a mean does not make it smaller.
 * What hangs on light and pose does get smaller, as 1 / √n. How much of the doubt that is, the photos tell themselves, by how far they
 * lie apart: three shots of one moment lie together, and gain next to nothing. No more than half of the squares is ever taken for such,
 * since the error of three rendered photos in other light and pose fell to 0.8 of one's, and √(1/2 + 1/2 / 3) is 0.82.
 *
 * @packageDocumentation
 */
import type { Lab } from '../optics/cielab.ts';
import { deltaE00 } from '../optics/delta-e00.ts';
import { averageFlakes } from './flake/average-flakes.ts';
import type { DoubtTerm, PhotoContrast, PhotoDoubt, PhotoMeasured, PhotoWarning } from './photo-measured.ts';

/** Bound, nine in ten, by root mean square: of ΔE00 as in `look-doubt.ts`, and of one number that is normal. */
const COLOUR_BOUND = 1.44;
const NUMBER_BOUND = 1.645;

/** At most this part of a photo's squared doubt is its own, and not its phone's and its card's. */
const MOST_OWN = 0.5;

/** Photos that lie this many of their bounds apart are hardly of one bait. Convention of this book. */
const DIFFER = 1.5;

/** Terms that are each photo's own whatever the photos show. */
const OF_A_PHOTO: readonly DoubtTerm[] = ['field', 'mixed', 'own', 'clip'];
const OF_A_PHONE: readonly DoubtTerm[] = ['tone', 'paper', 'camera'];

/**
 * The mean of photos of one bait on cards of one print, by one phone.
 *
 * Colours are averaged in Lab. The places of the bait are those of the first photo.
 * Throws: RangeError if there is no photo.
 */
export function averagePhotos(photos: readonly PhotoMeasured[]): PhotoMeasured {
  const [first] = photos;
  if (first === undefined) throw new RangeError('No photo was given; give at least one');
  if (photos.length === 1) return first;
  const overWhite = meanLab(present(photos, ({ overWhite }) => overWhite));
  const overBlack = meanLab(present(photos, ({ overBlack }) => overBlack));
  const contrast = meanContrast(present(photos, ({ contrast }) => contrast));
  const apart = COLOUR_BOUND * Math.sqrt(scatter(photos, overWhite, overBlack));
  const doubts = photos.map(({ doubt }) => doubt);
  const differ = apart > DIFFER * rms(doubts.map(({ bound }) => bound));
  const widths = present(photos, ({ widthMm }) => widthMm);
  return {
    kind: 'measured',
    card: first.card,
    ...(overWhite ? { overWhite } : {}),
    ...(overBlack ? { overBlack } : {}),
    ...(contrast ? { contrast } : {}),
    doubt: meanDoubt(doubts, apart),
    ...averageFlakes(photos),
    ...(widths.length > 0 ? { widthMm: mean(widths) } : {}),
    baitPixels: first.baitPixels,
    zonePixels: first.zonePixels,
    warnings: warningsOf(photos, overWhite !== undefined && overBlack !== undefined, differ),
  };
}

function warningsOf(photos: readonly PhotoMeasured[], bothHalves: boolean, differ: boolean): readonly PhotoWarning[] {
  const warnings = new Set(photos.flatMap((photo) => photo.warnings));
  if (bothHalves) warnings.delete('one-half');
  if (differ) warnings.add('photos-differ');
  return [...warnings];
}

/**
 * Bound of a mean of n: what is in common stays, what is each one's own goes with 1 / √n.
 *
 * @param bound of one; `apart` is how far they lie apart, as a bound; `own` what is each one's own at the least
 */
function boundOfMean(bound: number, apart: number, own: number, n: number): { common: number; excess: number } {
  const most = Math.max(own ** 2, MOST_OWN * bound ** 2);
  const each = Math.min(Math.max(apart ** 2, own ** 2), most);
  return { common: bound ** 2 - each + each / n, excess: Math.max(0, apart ** 2 - each) / n };
}

function meanDoubt(doubts: readonly PhotoDoubt[], apart: number): PhotoDoubt {
  const n = doubts.length;
  const factor =
    rms(doubts.map(({ bound }) => bound)) / rms(doubts.map(({ terms }) => Math.hypot(...Object.values(terms))));
  const terms = { ...doubts[0]!.terms } as Record<DoubtTerm, number>;
  for (const term of OF_A_PHONE) terms[term] = rms(doubts.map((doubt) => doubt.terms[term]));
  for (const term of OF_A_PHOTO) terms[term] = rms(doubts.map((doubt) => doubt.terms[term])) / Math.sqrt(n);
  const phone = Math.hypot(...OF_A_PHONE.map((term) => terms[term]));
  const photo = Math.hypot(...OF_A_PHOTO.map((term) => terms[term]));
  const one = factor * Math.hypot(phone, photo * Math.sqrt(n));
  const { common, excess } = boundOfMean(one, apart, factor * photo * Math.sqrt(n), n);
  const left = phone > 0 ? Math.sqrt(Math.max(0, common / factor ** 2 - photo ** 2)) / phone : 1;
  for (const term of OF_A_PHONE) terms[term] *= left;
  terms.own = Math.hypot(terms.own, Math.sqrt(excess) / factor);
  const names = Object.keys(terms) as DoubtTerm[];
  const largest = names.reduce((most, term) => (terms[term] > terms[most] ? term : most));
  return { bound: factor * Math.hypot(...Object.values(terms)), largest, terms };
}

function meanContrast(contrasts: readonly PhotoContrast[]): PhotoContrast | undefined {
  const n = contrasts.length;
  if (n === 0) return undefined;
  const ratio = mean(contrasts.map((contrast) => contrast.ratio));
  const bound = rms(contrasts.map((contrast) => contrast.bound));
  if (n === 1) return { ratio, bound };
  const squares = contrasts.reduce((sum, contrast) => sum + (contrast.ratio - ratio) ** 2, 0);
  const { common, excess } = boundOfMean(bound, NUMBER_BOUND * Math.sqrt(squares / (n - 1)), 0, n);
  return { ratio, bound: Math.sqrt(common + excess) };
}

/** Variance of a photo's colours about their mean: squared ΔE00, the mean over the halves. */
function scatter(photos: readonly PhotoMeasured[], overWhite: Lab | undefined, overBlack: Lab | undefined): number {
  const half = (labs: readonly Lab[], middle: Lab | undefined): readonly number[] =>
    middle && labs.length > 1
      ? [labs.reduce((sum, lab) => sum + deltaE00(lab, middle) ** 2, 0) / (labs.length - 1)]
      : [];
  const halves = [
    ...half(
      present(photos, (photo) => photo.overWhite),
      overWhite,
    ),
    ...half(
      present(photos, (photo) => photo.overBlack),
      overBlack,
    ),
  ];
  return halves.length === 0 ? 0 : mean(halves);
}

function meanLab(labs: readonly Lab[]): Lab | undefined {
  if (labs.length === 0) return undefined;
  return { L: mean(labs.map(({ L }) => L)), a: mean(labs.map(({ a }) => a)), b: mean(labs.map(({ b }) => b)) };
}

function present<Of>(photos: readonly PhotoMeasured[], of: (photo: PhotoMeasured) => Of | undefined): readonly Of[] {
  return photos.flatMap((photo) => of(photo) ?? []);
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const rms = (values: readonly number[]): number => Math.sqrt(mean(values.map((value) => value ** 2)));
