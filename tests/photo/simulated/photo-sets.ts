/**
 * The sets of simulated photos: how each is taken, and how strong what a phone does to them is.
 *
 * @packageDocumentation
 */

/** How photos of a set are taken. Parts and deviations without a source are assumptions. */
export interface PhotoSet {
  readonly name: string;
  /** In words, for the table. */
  readonly says: string;
  readonly width: number;
  readonly height: number;
  /** Degrees, at most. */
  readonly tilt: number;
  /** The highlight shoulder x(1 + a)/(1 + a x): from and to. */
  readonly shoulder: readonly [number, number];
  /** At most: how much of an S curve, local tone mapping and added saturation. */
  readonly curve: number;
  readonly local: number;
  readonly saturation: number;
  /** Cameras with the standard observer's eyes. */
  readonly ideal?: true;
  /** Fall of light over the card, at most. */
  readonly gradient: number;
  /** How often a shadow's edge lies over the card, and how often a second light reaches it from one side. */
  readonly shadow: number;
  readonly mixed: number;
  /** Paper's linear level before the tone curve, 1 where a file ends: from and to. */
  readonly exposure: readonly [number, number];
  /** Out of focus: standard deviation of the spread in pixels of 2 megapixels. */
  readonly blur: readonly [number, number];
  /** Noise as a part of the light at full level; more in dim photos. */
  readonly noise: number;
  /** How often there is flake in the bait. */
  readonly flake: number;
  /** Highlights on the bait: strength against paper, at most. */
  readonly glare: number;
  /** The middle of the card stands higher than its ends, mm: from and to. */
  readonly bend: readonly [number, number];
}

const ORDINARY: PhotoSet = {
  name: 'b2',
  says: 'ordinary, shoulder as phones have it',
  width: 1632,
  height: 1224,
  tilt: 35,
  shoulder: [0.1, 0.9],
  curve: 0.25,
  local: 0.25,
  saturation: 0.15,
  gradient: 0.25,
  shadow: 0.15,
  mixed: 0.2,
  exposure: [0.62, 0.93],
  blur: [0.5, 0.9],
  noise: 0.006,
  flake: 0.6,
  glare: 2.5,
  bend: [0, 0.15],
};

/** All sets, the ordinary one first. */
export const PHOTO_SETS: readonly PhotoSet[] = [
  ORDINARY,
  { ...ORDINARY, name: 'a2', says: 'ordinary, S curve only', shoulder: [0, 0] },
  {
    ...ORDINARY,
    name: 'ideal',
    says: "the observer's own eyes, no tone curve",
    ideal: true,
    shoulder: [0, 0],
    curve: 0,
    local: 0,
    saturation: 0,
  },
  { ...ORDINARY, name: 'uneven', says: 'light falls by 45 %, or a shadow', gradient: 0.45, shadow: 0.5 },
  { ...ORDINARY, name: 'mixed', says: 'a second light from one side', mixed: 1 },
  { ...ORDINARY, name: 'small', says: '640 pixels across', width: 640, height: 480, blur: [0.5, 0.7] },
  { ...ORDINARY, name: 'dim', says: 'dim and out of focus', exposure: [0.12, 0.3], blur: [1.6, 2.4], noise: 0.012 },
  { ...ORDINARY, name: 'defocused', says: 'far out of focus', blur: [3, 4.2] },
  { ...ORDINARY, name: 'over', says: 'over-exposed', exposure: [1.15, 1.35] },
  { ...ORDINARY, name: 'dark', says: 'far too dark', exposure: [0.03, 0.09], noise: 0.012 },
  { ...ORDINARY, name: 'bent', says: 'card not flat, 0.8 to 2.4 mm', bend: [0.8, 2.4] },
  { ...ORDINARY, name: 'twelve', says: '12 megapixels, flake', width: 4032, height: 3024, flake: 1 },
  { ...ORDINARY, name: 'plain', says: '12 megapixels, no flake', width: 4032, height: 3024, flake: 0 },
];

/** A set by its name. Throws a RangeError with the names that there are. */
export function photoSet(name: string): PhotoSet {
  const found = PHOTO_SETS.find((each) => each.name === name);
  if (!found) throw new RangeError(`no set ${name}; there are ${PHOTO_SETS.map((each) => each.name).join(', ')}`);
  return found;
}
