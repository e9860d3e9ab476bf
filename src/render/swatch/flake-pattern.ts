/**
 * Flake as an SVG pattern, in hundredths of a millimetre.
 *
 * @packageDocumentation
 */
import { type Html, html } from '../html.ts';
import type { Depth, FlakeKind, PlacedFlake } from './flake-field.ts';
import { flakeField, isDot } from './flake-field.ts';
import { tint } from './tint.ts';

const UNITS_PER_MM = 100;
/** Degrees by which the square is turned: a repeat along the edges of a card is seen sooner than one across them. */
const TURNED = 27;
/** CSS pixels in a millimetre: 96 in an inch of 25.4 mm, by definition of CSS. */
export const PX_PER_MM: number = 96 / 25.4;

/** How light falls on the faces of a finish: parts of flakes that are lighter and darker than its colour, and how far. */
const FACES: Readonly<Record<string, { readonly part: number; readonly far: number }>> = {
  metallic: { part: 0.18, far: 0.3 },
  hologram: { part: 0.3, far: 0.3 },
  pearl: { part: 0.15, far: 0.2 },
};
/** What a hologram's face throws back, as its angle has it. */
const RAINBOW = ['#ff9a8f', '#ffe38a', '#9ff0a8', '#8fd3ff', '#d3a6ff'] as const;

const whole = (mm: number): number => Math.round(mm * UNITS_PER_MM);

/** Corners of a flake that lies flat, turned in its plane, from its centre, in mm. */
function corners(kind: FlakeKind, turn: number): readonly (readonly [number, number])[] {
  if (kind.outline === 'strip') {
    const [long, wide] = [(kind.longMm ?? kind.sizeMm * 4) / 2, kind.sizeMm / 2];
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    return (
      [
        [long, wide],
        [-long, wide],
        [-long, -wide],
        [long, -wide],
      ] as const
    ).map(([x, y]) => [x * cos - y * sin, x * sin + y * cos]);
  }
  const count = kind.outline === 'square' ? 4 : kind.outline === 'round' ? 10 : 6;
  const radius = kind.sizeMm / 2 / Math.cos(Math.PI / count);
  return Array.from({ length: count }, (_, at) => {
    const angle = turn + (2 * Math.PI * at) / count;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

/** Path of one flake, tilted, at a place. */
function outline(flake: PlacedFlake, kind: FlakeKind, x: number, y: number): string {
  const [cos, sin] = [Math.cos(flake.tilt), Math.sin(flake.tilt)];
  const narrow = Math.max(flake.facing, 0.06);
  let path = '';
  let [px, py] = [0, 0];
  for (const [at, [cx, cy]] of corners(kind, flake.turn).entries()) {
    const along = (cx * cos + cy * sin) * narrow;
    const across = cy * cos - cx * sin;
    const [nx, ny] = [whole(x + along * cos - across * sin), whole(y + along * sin + across * cos)];
    path +=
      at === 0 ? `M${nx} ${ny}l` : `${at > 1 && nx - px >= 0 ? ' ' : ''}${nx - px}${ny - py < 0 ? '' : ' '}${ny - py}`;
    [px, py] = [nx, ny];
  }
  return `${path}z`;
}

/** The places at which a flake is drawn so that the square repeats without a seam. */
function places(flake: PlacedFlake, reach: number, side: number): readonly (readonly [number, number])[] {
  const shifts = (at: number): number[] => (at < reach ? [0, side] : at > side - reach ? [0, -side] : [0]);
  return shifts(flake.x).flatMap((dx) => shifts(flake.y).map((dy) => [flake.x + dx, flake.y + dy] as const));
}

interface Face {
  readonly fill: string;
  readonly opacity: number;
  /** Width of a dot, in units; 0 for an outline. */
  readonly dot: number;
}

/** How visible flakes are drawn: each as the nearest of these, since every one more makes the drawing larger. */
const VISIBLE_CLASSES = [0.2, 0.5, 0.9] as const;

function faceOf(flake: PlacedFlake, kind: FlakeKind): Face {
  const { part, far } = FACES[kind.finish] ?? { part: 0, far: 0 };
  const turned =
    kind.finish === 'hologram' && flake.glint < part
      ? tint(kind.hex, RAINBOW[Math.floor((flake.glint / part) * RAINBOW.length)]!, 0.7)
      : flake.glint < part
        ? tint(kind.hex, '#ffffff', far)
        : flake.glint > 1 - part
          ? tint(kind.hex, '#000000', far * 0.6)
          : kind.hex;
  const opacity = VISIBLE_CLASSES.reduce((best, each) =>
    Math.abs(each - flake.visible) < Math.abs(best - flake.visible) ? each : best,
  );
  if (!isDot(kind)) return { fill: turned, opacity, dot: 0 };
  // A disc as large as what the tilted face shows, in two sizes; lying flat, the whole face.
  const shown = flake.facing === 1 ? 1 : flake.facing < 0.5 ? 0.25 : 0.75;
  const facePerSquare =
    kind.outline === 'square' ? 4 / Math.PI : kind.outline === 'round' ? 1 : (2 * Math.sqrt(3)) / Math.PI;
  return {
    fill: turned,
    opacity,
    dot: Math.max(4, Math.round(kind.sizeMm * UNITS_PER_MM * Math.sqrt(shown * facePerSquare))),
  };
}

/** A pattern to fill a shape with. */
export interface FlakePattern {
  /** What to write as `fill`. */
  readonly fill: string;
  readonly definition: Html;
}

/** How patterns are drawn. */
export interface PatternOptions {
  /** Beginning of their ids; one that the page has once. */
  readonly id: string;
  readonly seed: string;
  /** Most flakes of all kinds together. */
  readonly budget: number;
  /** User units of the drawing in a millimetre: 1 where its viewBox is in mm, `PX_PER_MM` without one. */
  readonly scale: number;
}

/** Patterns of a cup's flake to lay over one another, one for each kind of which any would be seen. */
export function flakePatterns(
  kinds: readonly FlakeKind[],
  depth: Depth,
  options: PatternOptions,
): readonly FlakePattern[] {
  const budget = options.budget / Math.max(kinds.length, 1);
  return kinds.flatMap((kind, index) => {
    const id = kinds.length === 1 ? options.id : `${options.id}-${index}`;
    return onePattern(kind, depth, { ...options, id, budget, seed: `${options.seed}/${index}` }) ?? [];
  });
}

function onePattern(kind: FlakeKind, depth: Depth, options: PatternOptions): FlakePattern | undefined {
  const { sideMm, flakes } = flakeField(kind, depth, options.seed, options.budget);
  if (flakes.length === 0) return undefined;
  const faces = new Map<string, Face & { path: string }>();
  for (const flake of flakes) {
    const face = faceOf(flake, kind);
    const key = `${face.fill}${face.opacity}/${face.dot}`;
    let entry = faces.get(key);
    if (entry === undefined) {
      entry = { ...face, path: '' };
      faces.set(key, entry);
    }
    for (const [x, y] of places(flake, (kind.longMm ?? kind.sizeMm) * 0.6, sideMm)) {
      entry.path += face.dot > 0 ? `M${whole(x)} ${whole(y)}h0` : outline(flake, kind, x, y);
    }
  }
  const paths = [...faces.values()].map(({ fill, opacity, dot, path }) => {
    const seen = opacity < 1 ? html` opacity="${opacity}"` : '';
    return dot > 0
      ? html`<path stroke="${fill}" stroke-width="${dot}"${seen} d="${path}"/>`
      : html`<path fill="${fill}"${seen} d="${path}"/>`;
  });
  const side = whole(sideMm);
  const scale = Number((options.scale / UNITS_PER_MM).toFixed(6));
  return {
    fill: `url(#${options.id})`,
    definition: html`<pattern id="${options.id}" width="${side}" height="${side}" patternUnits="userSpaceOnUse" patternTransform="rotate(${TURNED}) scale(${scale})" stroke-linecap="round">${paths}</pattern>`,
  };
}
