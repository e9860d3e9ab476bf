/**
 * The light that a camera catches of a scene, pixel by pixel: linear, a perfect diffuser in full light near 1.
 *
 * @packageDocumentation
 */
import { Chance } from '../../measure/foreign/world/chance.ts';
import { BaitSurface, type Hit } from './bait-surface.ts';
import { type CardTones, cardTones, toneAt } from './card-tones.ts';
import { flakeAt } from './flakes.ts';
import type { Sight } from './lens.ts';
import { type Palette, type Palettes, palettesOf, THICKNESS_STEPS, TONE_STEPS } from './palettes.ts';
import type { Scene } from './scene.ts';
import { someTable, type TableTop } from './table-top.ts';

/** Rows of red, green and blue, linear. */
export interface LinearImage {
  readonly width: number;
  readonly height: number;
  readonly data: Float32Array;
}

/** Steps of how light runs sideways, in its mean reach: a ninth of all light comes from each (quantiles of a two-sided exponential). */
const SIDEWAYS = [-2.197, -1.099, -0.588, -0.251, 0, 0.251, 0.588, 1.099, 2.197];

/** How much less light reaches paper right beside a bait, and within what distance, mm. Assumptions. */
const CORNER_SHADE = 0.22;
const CORNER_REACH = 1.6;

/** The picture that falls on the sensor. */
export function rendered(scene: Scene): LinearImage {
  return new Renderer(scene).image();
}

class Renderer {
  readonly #scene: Scene;
  readonly #palettes: Palettes;
  readonly #tones: CardTones;
  readonly #surface: BaitSurface;
  readonly #table: TableTop;
  readonly #middle: readonly [number, number];
  readonly #sight: Sight = { x: 0, y: 0, leanX: 0, leanY: 0, axis: 1 };
  readonly #hit: Hit = { along: 0, across: 0, height: 0 };
  /** Six numbers, as in palettes; and highlights, the same for all. */
  readonly #seen = new Float64Array(6);
  #shine = 0;

  constructor(scene: Scene) {
    this.#scene = scene;
    this.#palettes = palettesOf(scene);
    const { card, print, pose } = scene;
    this.#tones = cardTones(card, this.#palettes.toneOfValue, print.scale, pose.focal / pose.distance);
    this.#surface = new BaitSurface(scene.bait.shape);
    this.#table = someTable(new Chance(31 * scene.grain + 17));
    this.#middle = [(card.width * print.scale) / 2, (card.height * print.scale) / 2];
  }

  image(): LinearImage {
    const { pose, lens, development, lighting } = this.#scene;
    const { width, height } = pose;
    const data = new Float32Array(3 * width * height);
    const sight = this.#sight;
    const seen = this.#seen;
    for (let row = 0, at = 0; row < height; row++) {
      for (let column = 0; column < width; column++, at += 3) {
        lens.look(column + 0.5, row + 0.5, sight);
        const shade = this.#look();
        const [x, y] = [sight.x - this.#middle[0], sight.y - this.#middle[1]];
        const outwards =
          ((column - width / 2) ** 2 + (row - height / 2) ** 2) / ((width * width + height * height) / 4);
        const level = shade * this.#light(x, y) * (1 - development.vignette * outwards);
        const share = Math.max(0, lighting.share + lighting.shareSlope[0] * x + lighting.shareSlope[1] * y);
        const shine = this.#shine * this.#palettes.card[6 * TONE_STEPS - 5]!;
        for (let channel = 0; channel < 3; channel++)
          data[at + channel] = level * (seen[channel]! * (1 - share) + seen[channel + 3]! * share) + shine;
      }
    }
    return { width, height, data };
  }

  /** Puts what is seen into `#seen`; gives how much of the table's light reaches it. */
  #look(): number {
    const sight = this.#sight;
    this.#shine = 0;
    this.#unbend();
    if (this.#surface.meets(sight, this.#hit)) return this.#bait();
    const tone = toneAt(this.#tones, sight.x, sight.y);
    if (tone < 0) return this.#put(this.#table.colourAt(sight.x, sight.y), 0);
    this.#put(this.#palettes.card, 6 * Math.round(tone * (TONE_STEPS - 1)));
    return this.#surface.isFar(sight.x, sight.y, 5 * CORNER_REACH)
      ? 1
      : 1 - CORNER_SHADE * Math.exp(-this.#surface.beside(sight.x, sight.y) / CORNER_REACH);
  }

  /** Where the card stands up from the table a line of sight meets it earlier. */
  #unbend(): void {
    const { bend } = this.#scene;
    if (bend === 0) return;
    const sight = this.#sight;
    const [x, y] = [sight.x, sight.y];
    for (let round = 0; round < 3; round++) {
      const part = (sight.x - this.#middle[0]) / this.#middle[0];
      const rise = bend * Math.max(0, 1 - part * part);
      sight.x = x + rise * sight.leanX;
      sight.y = y + rise * sight.leanY;
    }
  }

  #bait(): number {
    const { bait, lighting } = this.#scene;
    const hit = this.#hit;
    const { along, across } = hit;
    const normal = this.#surface.normal(hit);
    this.#shine = this.#highlight(normal);
    const flake = bait.flakes ? flakeAt(bait.flakes, along, across) : 0;
    if (flake > 0 && this.#palettes.flake) {
      this.#put(this.#palettes.flake, 0);
      return flake;
    }
    const thickness = bait.shape.thickness(along, across);
    this.#through(thickness, this.#backing(bait.sideways * thickness));
    const [lampX, lampY, lampUp] = lighting.lamp;
    const facing = Math.max(0.2, (normal[0] * lampX + normal[1] * lampY + normal[2] * lampUp) / lampUp);
    return 1 + lighting.shading * (Math.min(1.6, facing) - 1);
  }

  /** Tone of the card below the place of the bait that is seen, with what comes from beside it. */
  #backing(reach: number): number {
    const sight = this.#sight;
    const [x, y] = [sight.x + this.#hit.height * sight.leanX, sight.y + this.#hit.height * sight.leanY];
    if (reach === 0) return Math.max(0, toneAt(this.#tones, x, y));
    let sum = 0;
    for (const step of SIDEWAYS) sum += Math.max(0, toneAt(this.#tones, x + step * reach, y));
    return sum / SIDEWAYS.length;
  }

  #through(thickness: number, backing: number): void {
    const { overPaper, overBlack, thickest } = this.#palettes;
    const place = Math.sqrt(Math.min(1, thickness / thickest)) * (THICKNESS_STEPS - 1);
    const below = Math.min(THICKNESS_STEPS - 2, Math.floor(place));
    const part = place - below;
    const of = (palette: Palette, channel: number): number => {
      const low = palette[6 * below + channel]!;
      return low + part * (palette[6 * below + 6 + channel]! - low);
    };
    for (let channel = 0; channel < 6; channel++)
      this.#seen[channel] = backing * of(overPaper, channel) + (1 - backing) * of(overBlack, channel);
  }

  /** A lamp's mirror image in the gloss, softened by its size (Blinn 1977: halfway between lamp and eye). */
  #highlight(normal: readonly [number, number, number]): number {
    const { lamp, lampWidth, lampStrength } = this.#scene.lighting;
    const [x, y, up] = this.#scene.lens.towards;
    const half = [lamp[0] + x, lamp[1] + y, lamp[2] + up] as const;
    const length = Math.hypot(...half);
    const cosine = (normal[0] * half[0] + normal[1] * half[1] + normal[2] * half[2]) / length;
    const angle = Math.acos(Math.min(1, cosine)) / lampWidth;
    return lampStrength * Math.exp(-angle * angle);
  }

  #put(palette: ArrayLike<number>, from: number): number {
    for (let channel = 0; channel < 6; channel++) this.#seen[channel] = palette[from + channel]!;
    return 1;
  }

  /** How much light falls on a place of the table, mm from the card's middle. */
  #light(x: number, y: number): number {
    const { slope, shadow } = this.#scene.lighting;
    const even = Math.max(0.1, 1 + slope[0] * x + slope[1] * y);
    if (shadow.depth === 0) return even;
    const across = x * Math.cos(shadow.towards) + y * Math.sin(shadow.towards) - shadow.at;
    return even * (1 - shadow.depth / (1 + Math.exp(-across / (shadow.soft / 2))));
  }
}
