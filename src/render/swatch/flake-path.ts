/**
 * Paths of flakes, as short as they can be written: every number is whole, every step relative, and flakes that are painted
 * alike follow each other from top to bottom.
 *
 * @packageDocumentation
 */
import type { FlakeKind, PlacedFlake } from './flake-field.ts';

type Corner = readonly [x: number, y: number];

/** Corners of a flake that lies flat, turned in its plane, from its centre, in mm. */
function corners(kind: FlakeKind, turn: number): readonly Corner[] {
  if (kind.outline === 'strip') {
    const [long, wide] = [(kind.longMm ?? kind.sizeMm * 4) / 2, kind.sizeMm / 2];
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    const flat: readonly Corner[] = [
      [long, wide],
      [-long, wide],
      [-long, -wide],
      [long, -wide],
    ];
    return flat.map(([x, y]) => [x * cos - y * sin, x * sin + y * cos]);
  }
  const count = kind.outline === 'square' ? 4 : kind.outline === 'round' ? 10 : 6;
  const radius = kind.sizeMm / 2 / Math.cos(Math.PI / count);
  return Array.from({ length: count }, (_, at) => {
    const angle = turn + (2 * Math.PI * at) / count;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

/** One flake of a path: where its pen is set down, and the numbers that follow. Units of the drawing. */
export interface Mark {
  readonly x: number;
  readonly y: number;
  readonly steps: readonly number[];
}

/** A dot at a place. */
export function dotMark(x: number, y: number): Mark {
  return { x: Math.round(x), y: Math.round(y), steps: [] };
}

/** A flake's outline, tilted, at a place given in units, of which a millimetre has so many. */
export function outlineMark(flake: PlacedFlake, kind: FlakeKind, x: number, y: number, unitsPerMm: number): Mark {
  const [cos, sin] = [Math.cos(flake.tilt), Math.sin(flake.tilt)];
  const narrow = Math.max(flake.facing, 0.06);
  const [first, ...others] = corners(kind, flake.turn).map(([cx, cy]): Corner => {
    const along = (cx * cos + cy * sin) * narrow;
    const across = cy * cos - cx * sin;
    return [
      Math.round(x + (along * cos - across * sin) * unitsPerMm),
      Math.round(y + (along * sin + across * cos) * unitsPerMm),
    ];
  }) as [Corner, ...Corner[]];
  let [px, py] = first;
  const steps = others.flatMap(([cx, cy]) => {
    const step = [cx - px, cy - py];
    [px, py] = [cx, cy];
    return step;
  });
  return { x: first[0], y: first[1], steps };
}

/** Numbers of a path, with no more between them than must be. */
function numbers(list: readonly number[]): string {
  return list.map((number, at) => (at > 0 && number >= 0 ? ` ${number}` : `${number}`)).join('');
}

/** Path data of marks that are painted alike; their order is free, since one colour hides nothing of itself. */
export function pathOf(marks: readonly Mark[]): string {
  let [px, py] = [0, 0];
  return [...marks]
    .sort((one, other) => one.y - other.y || one.x - other.x)
    .map(({ x, y, steps }) => {
      const move = numbers([x - px, y - py]);
      [px, py] = [x, y];
      return steps.length === 0 ? `m${move}h0` : `m${move}l${numbers(steps)}z`;
    })
    .join('');
}
