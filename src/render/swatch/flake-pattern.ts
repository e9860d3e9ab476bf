/**
 * Flake as SVG patterns.
 *
 * @packageDocumentation
 */
import { MM_PER_INCH } from '../../units/unit.ts';
import { type Html, html } from '../html.ts';
import type { Depth, FlakeKind, PlacedFlake } from './flake-field.ts';
import { flakeField, isDot } from './flake-field.ts';
import { dotMark, type Mark, outlineMark, pathOf } from './flake-path.ts';
import { tint } from './tint.ts';

/** Units of a drawing that a flake is wide: as fine as a screen shows it, since every digit is sent as often as there are flakes. */
const UNITS_PER_FLAKE = 20;
const UNITS_PER_MM = { least: 10, most: 50, dots: 20 };
/**
 * Degrees by which the square is turned: a repeat along the edges of a card is seen sooner than one across them. Each further
 * kind is turned further, so that two kinds don't repeat together.
 */
const TURNED = { first: 27, further: 34 };
/** CSS pixels in a millimetre: 96 in an inch of 25.4 mm, by definition of CSS. */
export const PX_PER_MM: number = 96 / MM_PER_INCH;

/** How light falls on the faces of a finish: parts of flakes that are lighter and darker than its colour, and how far. */
const FACES: Readonly<Record<string, { readonly part: number; readonly far: number }>> = {
  metallic: { part: 0.18, far: 0.3 },
  hologram: { part: 0.3, far: 0.3 },
  pearl: { part: 0.15, far: 0.2 },
};
/** What a hologram's face throws back, as its angle has it. */
const RAINBOW = ['#ff9a8f', '#ffe38a', '#9ff0a8', '#8fd3ff', '#d3a6ff'] as const;

/** The places at which a flake is drawn so that the square repeats without a seam. */
function places(flake: PlacedFlake, reach: number, side: number): readonly (readonly [number, number])[] {
  const shifts = (at: number): number[] => (at < reach ? [0, side] : at > side - reach ? [0, -side] : [0]);
  return shifts(flake.x).flatMap((dx) => shifts(flake.y).map((dy) => [flake.x + dx, flake.y + dy] as const));
}

interface Face {
  readonly fill: string;
  readonly opacity: number;
  /** Width of a dot, mm; 0 for an outline. */
  readonly dotMm: number;
}

/**
 * How visible flakes are drawn: each as the nearest of these, since every one more makes the drawing larger. The few faces
 * that the light makes lighter or darker come in fewer kinds.
 */
const VISIBLE_CLASSES = { usual: [0.2, 0.5, 0.9], turned: [0.3, 0.85] } as const;

const nearest = (classes: readonly number[], visible: number): number =>
  classes.reduce((best, each) => (Math.abs(each - visible) < Math.abs(best - visible) ? each : best));

function faceOf(flake: PlacedFlake, kind: FlakeKind, seen: number): Face {
  const { part, far } = FACES[kind.finish] ?? { part: 0, far: 0 };
  const turned =
    kind.finish === 'hologram' && flake.glint < part
      ? tint(kind.hex, RAINBOW[Math.floor((flake.glint / part) * RAINBOW.length)]!, 0.7)
      : flake.glint < part
        ? tint(kind.hex, '#ffffff', far)
        : flake.glint > 1 - part
          ? tint(kind.hex, '#000000', far * 0.6)
          : kind.hex;
  const usual = turned === kind.hex;
  const opacity = nearest(usual ? VISIBLE_CLASSES.usual : VISIBLE_CLASSES.turned, flake.visible * seen);
  if (!isDot(kind)) return { fill: turned, opacity, dotMm: 0 };
  // A disc as large as what the tilted face shows, in two sizes; lying flat, the whole face.
  const shown = flake.facing === 1 ? 1 : !usual ? 0.5 : flake.facing < 0.5 ? 0.25 : 0.75;
  const facePerSquare =
    kind.outline === 'square' ? 4 / Math.PI : kind.outline === 'round' ? 1 : (2 * Math.sqrt(3)) / Math.PI;
  return { fill: turned, opacity, dotMm: Math.max(0.04, kind.sizeMm * Math.sqrt(shown * facePerSquare)) };
}

/** How patterns are drawn. */
export interface PatternOptions {
  /** Beginning of their ids; one that the page has once. */
  readonly id: string;
  readonly seed: string;
  /** Most flakes drawn of all kinds together. */
  readonly budget: number;
  /** Units of the drawing in a millimetre: `PX_PER_MM`, or 1 where the drawing is in mm. */
  readonly scale: number;
  /** Part of the flake that is still seen through what lies before it, 0..1; 1 if left out. */
  readonly seen?: number;
}

/** Flake to lay over the places where a cup is thick, and over those where it is thinner. */
export interface FlakePatterns {
  /** For each depth what to write as `fill`, one over another. */
  readonly fills: readonly (readonly string[])[];
  readonly definitions: readonly Html[];
}

/**
 * Patterns of a cup's flake at each depth that a drawing shows it at.
 *
 * A thin part shows the upper slice of what the deepest part shows, so the flakes of a cup are drawn once for all depths.
 */
export function flakePatterns(
  kinds: readonly FlakeKind[],
  depths: readonly Depth[],
  options: PatternOptions,
): FlakePatterns {
  const budget = options.budget / Math.max(kinds.length, 1);
  const patterns = kinds.map((kind, index) => {
    const id = kinds.length === 1 ? options.id : `${options.id}-${index}`;
    const turned = TURNED.first + TURNED.further * index;
    return kindPatterns(kind, depths, { ...options, id, budget, seed: `${options.seed}/${index}`, turned });
  });
  return {
    fills: depths.map((_, at) => patterns.flatMap(({ fills }) => fills[at]!)),
    definitions: patterns.flatMap(({ definitions }) => definitions),
  };
}

const deepest = (depths: readonly Depth[]): Depth =>
  depths.reduce((most, depth) => (depth.thicknessMm > most.thicknessMm ? depth : most));

function kindPatterns(
  kind: FlakeKind,
  depths: readonly Depth[],
  options: PatternOptions & { readonly turned: number },
): FlakePatterns {
  const { sideMm, flakes } = flakeField(kind, deepest(depths), options.seed, options.budget);
  const { id } = options;
  // A depth shows the flakes that lie no deeper: how many those are tells the depths apart.
  const shown = depths.map(({ thicknessMm }) => flakes.filter(({ deepMm }) => deepMm <= thicknessMm).length);
  const levels = [...new Set(shown)].filter((count) => count > 0).sort((one, other) => one - other);
  const wanted = isDot(kind)
    ? UNITS_PER_MM.dots
    : Math.min(UNITS_PER_MM.most, Math.max(UNITS_PER_MM.least, UNITS_PER_FLAKE / kind.sizeMm));
  const side = Math.round(sideMm * wanted);
  // The square is a whole number of units wide, so that what leaves on one side comes in on the other.
  const unitsPerMm = side / sideMm;
  const square = html`width="${side}" height="${side}" patternUnits="userSpaceOnUse" patternTransform="rotate(${options.turned}) scale(${Number((options.scale / unitsPerMm).toPrecision(5))})"`;
  const cap = isDot(kind) ? html` stroke-linecap="round"` : '';
  const definitions = levels.map((count, level) => {
    // The deepest come first.
    const slice = flakes.slice(flakes.length - count, flakes.length - (levels[level - 1] ?? 0));
    const paths = facePaths(slice, kind, { sideMm, unitsPerMm, seen: options.seen ?? 1 });
    const drawn = html`${paths}${level > 0 ? html`<use href="#${id}u${level - 1}"/>` : ''}`;
    const grouped = level < levels.length - 1 ? html`<g id="${id}u${level}">${drawn}</g>` : drawn;
    // Further patterns of a kind take their square from its first.
    return html`<pattern id="${id}p${level}" ${level === 0 ? square : html`href="#${id}p0"`}${cap}>${grouped}</pattern>`;
  });
  return { fills: shown.map((count) => (count > 0 ? [`url(#${id}p${levels.indexOf(count)})`] : [])), definitions };
}

function facePaths(
  flakes: readonly PlacedFlake[],
  kind: FlakeKind,
  { sideMm, unitsPerMm, seen }: { readonly sideMm: number; readonly unitsPerMm: number; readonly seen: number },
): Html {
  const faces = new Map<string, Face & { readonly marks: Mark[] }>();
  const reach = (kind.longMm ?? kind.sizeMm) * 0.6;
  for (const flake of flakes) {
    const face = faceOf(flake, kind, seen);
    const key = `${face.fill}${face.opacity}/${face.dotMm}`;
    const entry = faces.get(key) ?? { ...face, marks: [] };
    faces.set(key, entry);
    for (const [xMm, yMm] of places(flake, reach, sideMm)) {
      const [x, y] = [xMm * unitsPerMm, yMm * unitsPerMm];
      entry.marks.push(face.dotMm > 0 ? dotMark(x, y) : outlineMark(flake, kind, x, y, unitsPerMm));
    }
  }
  return html`${[...faces.values()].map(({ fill, opacity, dotMm, marks }) => {
    const paint = `${fill}${Math.round(opacity * 255).toString(16)}`;
    return dotMm > 0
      ? html`<path stroke="${paint}" stroke-width="${Number((dotMm * unitsPerMm).toFixed(1))}" d="${pathOf(marks)}"/>`
      : html`<path fill="${paint}" d="${pathOf(marks)}"/>`;
  })}`;
}
