/**
 * Everything that is in front of a camera when one simulated photo is taken, drawn by chance from a set and a seed.
 *
 * @packageDocumentation
 */
import { Chance } from '../../measure/foreign/world/chance.ts';
import { type BaitShape, someChip, someWorm } from './bait-shape.ts';
import { type Camera, idealCamera, someCamera } from './cameras.ts';
import type { CardPicture } from './card-picture.ts';
import { type FlakeMap, someFlakeKind, thrownFlakes } from './flakes.ts';
import { type Plastic, somePlastic } from './layers.ts';
import { filled, Lens, type Pose } from './lens.ts';
import { type Light, someLight } from './lights.ts';
import type { PhotoSet } from './photo-sets.ts';
import { type Print, somePrint } from './print.ts';

/** How light falls on the table. Places in mm from the card's middle. */
export interface Lighting {
  readonly main: Light;
  readonly second: Light;
  /** Share of the second light at the card's middle, and how it changes along a direction, for each mm. */
  readonly share: number;
  readonly shareSlope: readonly [number, number];
  /** How the light falls, for each mm. */
  readonly slope: readonly [number, number];
  /** A shadow's edge: where and across what direction, how soft (mm), and how much it takes. */
  readonly shadow: { readonly at: number; readonly towards: number; readonly soft: number; readonly depth: number };
  /** Where highlights come from: x, y, up; how wide a lamp is seen, radians; how bright against paper. */
  readonly lamp: readonly [number, number, number];
  readonly lampWidth: number;
  readonly lampStrength: number;
  /** How much a bait's sides are darker than its top: 0 not at all, 1 as matt paper would be. */
  readonly shading: number;
}

/** A bait on the card. */
export interface Bait {
  readonly shape: BaitShape;
  readonly plastic: Plastic;
  /** Units of the plastic's thickness for each mm. */
  readonly unitsPerMm: number;
  /** How far the light runs sideways, as a part of the thickness. */
  readonly sideways: number;
  readonly flakes?: FlakeMap;
}

/** What a phone makes of the light. */
export interface Development {
  readonly exposure: number;
  readonly flare: number;
  readonly vignette: number;
  readonly shoulder: number;
  readonly curve: number;
  readonly local: number;
  readonly saturation: number;
  readonly noise: number;
  readonly blur: number;
  readonly sharpening: number;
  readonly quality: number;
}

/** All of a photo before it is taken. */
export interface Scene {
  readonly card: CardPicture;
  readonly print: Print;
  readonly camera: Camera;
  readonly lens: Lens;
  readonly pose: Pose;
  /** How much the card's middle stands higher than its ends, mm. */
  readonly bend: number;
  readonly lighting: Lighting;
  readonly bait: Bait;
  readonly development: Development;
  /** Seeds of the table below and of the noise. */
  readonly grain: number;
}

/** What is the same in several photos of one bait, and what each photo has of its own. */
export interface SceneSeeds {
  /** Bait, print, phone. */
  readonly bait: number;
  /** Light, pose, exposure. */
  readonly photo: number;
}

/** Draws a scene. The same seeds give the same scene; `kind` is drawn as well where it is not said. */
export function sceneOf(set: PhotoSet, card: CardPicture, seeds: SceneSeeds, kind?: BaitShape['kind']): Scene {
  const [things, taking] = [new Chance(7919 * seeds.bait + 11), new Chance(104_729 * seeds.photo + 5)];
  const print = somePrint(things);
  const camera = set.ideal ? idealCamera(things) : someCamera(things);
  const middle = [(card.width * print.scale) / 2, (card.height * print.scale) / 2] as const;
  const isChip = (kind ?? (things.uniform() < 0.25 ? 'chip' : 'worm')) === 'chip';
  const shape = isChip ? someChip(things, middle) : someWorm(things, middle, card.room * print.scale);
  const thick = isChip ? shape.top : 0.9 * shape.top;
  const flakeKind = things.uniform() < set.flake ? someFlakeKind(things) : undefined;
  const bait: Bait = {
    shape,
    plastic: somePlastic(things),
    unitsPerMm: Math.exp(things.normal(0.7) - 0.3) / thick,
    sideways: things.uniform() < 0.5 ? 0.25 * things.uniform() : 0,
    ...(flakeKind ? { flakes: thrownFlakes(flakeKind, shape, things) } : {}),
  };
  const phone = phoneOf(set, things);
  const pose = somePose(set, card, print, taking);
  return {
    card,
    print,
    camera,
    pose,
    lens: new Lens(pose),
    bend: between(set.bend, taking),
    lighting: someLighting(set, card, taking),
    bait,
    development: { ...phone, ...shotOf(set, taking) },
    grain: seeds.photo,
  };
}

function between([from, to]: readonly [number, number], chance: Chance): number {
  return from + (to - from) * chance.uniform();
}

/** What a phone does to every photo. */
function phoneOf(set: PhotoSet, chance: Chance) {
  return {
    shoulder: between(set.shoulder, chance),
    curve: set.curve * chance.uniform(),
    local: set.local * chance.uniform(),
    saturation: set.saturation * chance.uniform(),
    vignette: 0.2 * chance.uniform(),
    flare: 0.001 + 0.008 * chance.uniform(),
    sharpening: 0.2 + 0.6 * chance.uniform(),
    quality: Math.round(60 + 30 * chance.uniform()),
  };
}

/** What hangs on the one photo. */
function shotOf(set: PhotoSet, chance: Chance) {
  return {
    exposure: between(set.exposure, chance),
    noise: set.noise * (0.5 + chance.uniform()),
    blur: between(set.blur, chance) * Math.max(1, (0.6 * set.width) / 1632),
  };
}

function somePose(set: PhotoSet, card: CardPicture, print: Print, chance: Chance): Pose {
  const straight = chance.uniform() < 0.7;
  const quarter = Math.floor(4 * chance.uniform());
  const turn = straight ? (quarter * Math.PI) / 2 + chance.normal(0.12) : 2 * Math.PI * chance.uniform();
  const isUpright = straight && quarter % 2 === 1;
  const [width, height] = isUpright ? [set.height, set.width] : [set.width, set.height];
  const focal = Math.max(width, height) * (0.72 + 0.12 * chance.uniform()) * (chance.uniform() < 0.2 ? 1.6 : 1);
  const [right, bottom] = [card.width * print.scale, card.height * print.scale];
  const pose = {
    width,
    height,
    focal,
    tilt: ((set.tilt * Math.PI) / 180) * chance.uniform() ** 0.8,
    towards: 2 * Math.PI * chance.uniform(),
    turn,
    at: [right / 2 + chance.normal(4), bottom / 2 + chance.normal(3)] as const,
    radial: chance.normal(0.004),
  };
  const corners = [0, right].flatMap((x) => [0, bottom].map((y) => [x, y] as const));
  return filled(pose, corners, 0.01 + 0.06 * chance.uniform());
}

function someLighting(set: PhotoSet, card: CardPicture, chance: Chance): Lighting {
  const main = someLight(chance);
  const isMixed = chance.uniform() < set.mixed;
  const [towards, aside] = [2 * Math.PI * chance.uniform(), 2 * Math.PI * chance.uniform()];
  const fall = (set.gradient * chance.uniform()) / card.width;
  const strayed = isMixed ? 0.05 + 0.1 * chance.uniform() : 0;
  const lean = (10 + 45 * chance.uniform()) * (Math.PI / 180);
  const lampAt = 2 * Math.PI * chance.uniform();
  return {
    main,
    second: someLight(chance),
    share: strayed / 2,
    shareSlope: [(strayed * Math.cos(aside)) / card.width, (strayed * Math.sin(aside)) / card.width],
    slope: [fall * Math.cos(towards), fall * Math.sin(towards)],
    shadow: {
      at: chance.normal(25),
      towards: 2 * Math.PI * chance.uniform(),
      soft: 2 + 12 * chance.uniform(),
      depth: chance.uniform() < set.shadow ? 0.1 + 0.1 * chance.uniform() : 0,
    },
    lamp: [Math.sin(lean) * Math.cos(lampAt), Math.sin(lean) * Math.sin(lampAt), Math.cos(lean)],
    lampWidth: (3 + 8 * chance.uniform()) * (Math.PI / 180),
    lampStrength: set.glare * chance.uniform(),
    shading: 0.35 * chance.uniform(),
  };
}
