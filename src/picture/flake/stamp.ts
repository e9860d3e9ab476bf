import type { BaitField } from '../../shapes/bait-field.ts';
import type { FlakeOutline } from './flake-outline.ts';
import type { PlacedFlakes } from './placed-flakes.ts';
import type { Shine } from './shine.ts';

/** What a flake shows. */
interface Shown {
  /** Linear sRGB of its face and then of a black one there: see `FlakeColours`. */
  readonly face: Float64Array;
  readonly shine: Shine;
  /** Mean flash of its crowd. */
  readonly crowd: number;
  /** What it hides of what is behind it, 0 to 1. */
  readonly opacity: number;
}

/** Flakes that are seen smaller than this, pixels, are brought to their true area: edges narrower than a pixel are not exact. */
const SMALL = 7;

/** From this size on, pixels, a face shows the window across itself. */
const MIRROR = 6;

/** No film is quite flat: from its middle to its rim a mirrored ray turns by so much. */
const BENT = 0.2;

/** Puts flakes on a layer, one over another. */
export class Stamp {
  private readonly field: BaitField;
  private readonly rgba: Float32Array;
  private readonly turned: number;
  // Of each pixel in its box; and of each row of that, from where to where it reaches.
  private cover = new Float32Array(256);
  private first = new Int32Array(16);
  private last = new Int32Array(16);
  // Of the flake at hand: axes of its plane as they are seen, and what each pair of edges asks of a pixel.
  private readonly across = new Float64Array(8);
  private readonly down = new Float64Array(8);
  private readonly half = new Float64Array(8);
  private readonly light = new Float64Array(3);

  /** @param turned looked at from the far side: the picture is going to be turned round */
  constructor(field: BaitField, rgba: Float32Array, turned: boolean) {
    this.field = field;
    this.rgba = rgba;
    this.turned = turned ? -1 : 1;
  }

  /** Puts a flake on the layer. */
  add(outline: FlakeOutline, placed: PlacedFlakes, index: number, shown: Shown): void {
    const { columns, rows, cover: bait, pixelsPerMm } = this.field;
    const [nx, ny, nz] = [placed.nx[index]!, placed.ny[index]!, placed.nz[index]!];
    const [cos, sin] = [Math.cos(placed.turn[index]!), Math.sin(placed.turn[index]!)];
    // Two axes in the plane of the face, at right angles, as they are seen; the third number of each is never needed.
    const [ax, ay, bx, by] = [
      1 - (nx * nx) / (1 + nz),
      (-nx * ny) / (1 + nz),
      (-nx * ny) / (1 + nz),
      1 - (ny * ny) / (1 + nz),
    ];
    const [ux, uy] = [cos * ax + sin * bx, cos * ay + sin * by];
    const [vx, vy] = [cos * bx - sin * ax, cos * by - sin * ay];
    const pairs = outline.halfMm.length;
    for (let pair = 0; pair < pairs; pair++) {
      const gx = (outline.cos[pair]! * vy - outline.sin[pair]! * uy) / nz;
      const gy = (outline.sin[pair]! * ux - outline.cos[pair]! * vx) / nz;
      const steep = Math.sqrt(gx * gx + gy * gy);
      this.across[pair] = gx / steep;
      this.down[pair] = gy / steep;
      this.half[pair] = (outline.halfMm[pair]! * pixelsPerMm) / steep;
    }
    const [x, y] = [placed.x[index]!, placed.y[index]!];
    const reach = outline.reachMm * pixelsPerMm;
    const [wide, high] = [reach * Math.sqrt(ux * ux + vx * vx) + 1, reach * Math.sqrt(uy * uy + vy * vy) + 1];
    const [left, right] = [Math.max(0, Math.floor(x - wide)), Math.min(columns - 1, Math.floor(x + wide))];
    const [top, bottom] = [Math.max(0, Math.floor(y - high)), Math.min(rows - 1, Math.floor(y + high))];
    const width = right - left + 1;
    const size = width * (bottom - top + 1);
    if (width <= 0 || size <= 0) return;
    if (this.cover.length < size) this.cover = new Float32Array(2 * size);
    if (this.first.length <= bottom - top) {
      this.first = new Int32Array(2 * (bottom - top + 1));
      this.last = new Int32Array(2 * (bottom - top + 1));
    }
    const { cover, first, last } = this;
    let sum = 0;
    for (let row = top, start = 0; row <= bottom; row++, start += width) {
      this.narrow(row - top, row + 0.5 - y, x, pairs, left, right);
      const end = last[row - top]!;
      for (let column = first[row - top]!; column <= end; column++) {
        const part = this.part(column + 0.5 - x, row + 0.5 - y, pairs);
        cover[start + column - left] = part;
        sum += part;
      }
    }
    if (sum === 0) return;
    const area = outline.areaMm2 * nz * pixelsPerMm * pixelsPerMm;
    const times = area < SMALL * SMALL ? area / sum : 1;
    const [rx, ry] = [2 * nz * nx, 2 * nz * ny];
    const mirrors = area >= MIRROR * MIRROR;
    const bent = BENT / reach;
    const chance = placed.chance[index]!;
    if (!mirrors) this.shine(shown, rx, ry, chance);
    for (let row = top, start = 0; row <= bottom; row++, start += width) {
      const end = last[row - top]!;
      for (let column = first[row - top]!; column <= end; column++) {
        const part = Math.min(1, cover[start + column - left]! * times) * shown.opacity;
        const pixel = row * columns + column;
        if (part === 0 || bait[pixel] === 0) continue;
        if (mirrors) this.shine(shown, rx + bent * (column + 0.5 - x), ry + bent * (row + 0.5 - y), chance);
        this.over(4 * pixel, part);
      }
    }
  }

  /** Notes from which to which column a flake reaches in a row: its edges are straight, so what lies between two of them is one run. */
  private narrow(row: number, dy: number, x: number, pairs: number, left: number, right: number): void {
    let from = left;
    let to = right;
    for (let pair = 0; pair < pairs; pair++) {
      const across = this.across[pair]!;
      const middle = this.down[pair]! * dy;
      const reach = this.half[pair]! + 0.5;
      if (Math.abs(across) < 1e-9) {
        if (Math.abs(middle) >= reach) to = from - 1;
        continue;
      }
      const [one, other] = [(-reach - middle) / across, (reach - middle) / across];
      from = Math.max(from, Math.ceil(x - 0.5 + Math.min(one, other)));
      to = Math.min(to, Math.floor(x - 0.5 + Math.max(one, other)));
    }
    this.first[row] = from;
    this.last[row] = to;
  }

  /** What part of a pixel lies between all pairs of edges. */
  private part(dx: number, dy: number, pairs: number): number {
    let least = 1;
    for (let pair = 0; pair < pairs; pair++) {
      const from = this.across[pair]! * dx + this.down[pair]! * dy;
      const half = this.half[pair]!;
      const part = unit(half - from + 0.5) + unit(half + from + 0.5) - 1;
      if (part < least) least = part;
    }
    return Math.max(least, 0);
  }

  /** What a face shows that mirrors a ray. */
  private shine({ face, shine, crowd }: Shown, x: number, y: number, chance: number): void {
    const factor = shine.factor(shine.flash(this.turned * x, y), crowd);
    const { rainbow } = shine;
    for (let channel = 0; channel < 3; channel++) {
      const veil = face[3 + channel]!;
      const hue = rainbow === 0 ? 1 : 1 + rainbow * Math.cos(2 * Math.PI * (chance + 0.3 * (x + y) + channel / 3));
      this.light[channel] = veil + factor * hue * (face[channel]! - veil);
    }
  }

  private over(at: number, part: number): void {
    const { rgba, light } = this;
    const rest = 1 - part;
    rgba[at] = rgba[at]! * rest + part * light[0]!;
    rgba[at + 1] = rgba[at + 1]! * rest + part * light[1]!;
    rgba[at + 2] = rgba[at + 2]! * rest + part * light[2]!;
    rgba[at + 3] = rgba[at + 3]! * rest + part;
  }
}

function unit(value: number): number {
  return value <= 0 ? 0 : Math.min(value, 1);
}
