/**
 * Spots of a zone that are not its body: flakes, and highlights.
 *
 * @packageDocumentation
 */
import { writeOklab } from '../bait/oklab.ts';
import { largestNear } from './largest-near.ts';
import type { BesideBody } from './local-body.ts';

/** What stands out from the body in one piece. */
export interface Spot {
  readonly areaMm2: number;
  readonly pixels: number;
  /** Mean light near its peak, as a part of paper's, and the same in OKLab. */
  readonly light: readonly [number, number, number];
  readonly core: readonly [number, number, number];
  /** Its peak: OKLab distance from the body. */
  readonly peak: number;
  /** Of an ellipse with its moments: how long it is, mm, and how many times as long as wide. */
  readonly longMm: number;
  readonly elongation: number;
  /** How much lighter than the body its core is, OKLab. */
  readonly lighter: number;
  /** It reaches the edge of the zone, and is larger than it seems. */
  readonly cut: boolean;
}

/** From this OKLab distance on a pixel is not the body's: about twice what is told side by side. And noise counts so many times. */
const LEAST_DISTANCE = 0.045;
const TIMES_NOISE = 4;

/**
 * A flake ends where its light, as far as it differs from the body's, has fallen to half of what it is within this distance, mm: blur
 * takes as much from a disc there as it adds, and a dull flake beside a bright one keeps an edge of its own.
 */
const EDGE = 0.5;
const EDGE_REACH_MM = 0.22;

/** Pixels from this part of the peak on are the core. */
const CORE = 0.8;

/** All spots of a zone. */
export function spotsOf(zone: BesideBody): readonly Spot[] {
  const { distance, light, columns, rows, perMm } = zone;
  const least = Math.max(LEAST_DISTANCE, TIMES_NOISE * zone.noise);
  const reach = Math.max(2, Math.round(EDGE_REACH_MM * perMm));
  const peaks = largestNear(distance, columns, rows, reach);
  const lights = largestNear(light, columns, rows, reach);
  const free = new Uint8Array(columns * rows);
  for (let at = 0; at < free.length; at++)
    if (peaks[at]! >= least && distance[at]! >= least / 2 && light[at]! >= EDGE * lights[at]!) free[at] = 1;
  const spots: Spot[] = [];
  for (let start = 0; start < free.length; start++) {
    if (free[start] === 0) continue;
    const members = connected(free, start, columns, rows);
    let peak = 0;
    for (const at of members) peak = Math.max(peak, distance[at]!);
    if (peak >= least) spots.push(spotFrom(zone, members, peak));
  }
  return spots;
}

/** Pixels that hang together with the first, by their sides; they are free no more. */
function connected(free: Uint8Array, start: number, columns: number, rows: number): readonly number[] {
  const found = [start];
  free[start] = 0;
  const add = (at: number): void => {
    if (free[at] === 0) return;
    free[at] = 0;
    found.push(at);
  };
  for (let next = 0; next < found.length; next++) {
    const at = found[next]!;
    const column = at % columns;
    if (column > 0) add(at - 1);
    if (column < columns - 1) add(at + 1);
    if (at >= columns) add(at - columns);
    if (at < columns * (rows - 1)) add(at + columns);
  }
  return found;
}

function spotFrom(zone: BesideBody, members: readonly number[], peak: number): Spot {
  const { columns, rows, perMm, signal, distance, lighter } = zone;
  const light: [number, number, number] = [0, 0, 0];
  let [cores, lift] = [0, 0];
  for (const at of members) {
    if (distance[at]! < CORE * peak) continue;
    cores += 1;
    lift += lighter[at]!;
    for (let channel = 0; channel < 3; channel++) light[channel]! += signal[3 * at + channel]!;
  }
  for (let channel = 0; channel < 3; channel++) light[channel]! /= cores;
  const core = new Float32Array(3);
  writeOklab(...light, core, 0);
  return {
    ...shapeOf(members, columns, rows, perMm),
    areaMm2: members.length / (perMm * perMm),
    pixels: members.length,
    light,
    core: [core[0]!, core[1]!, core[2]!],
    peak,
    lighter: lift / cores,
  };
}

/** An ellipse with the second moments of some pixels: each of its half axes is twice the root of an eigenvalue. */
function shapeOf(
  members: readonly number[],
  columns: number,
  rows: number,
  perMm: number,
): Pick<Spot, 'longMm' | 'elongation' | 'cut'> {
  let [x, y, xx, yy, xy, cut] = [0, 0, 0, 0, 0, false];
  for (const at of members) {
    const [column, row] = [at % columns, Math.floor(at / columns)];
    cut ||= column === 0 || column === columns - 1 || row === 0 || row === rows - 1;
    x += column;
    y += row;
    xx += column * column;
    yy += row * row;
    xy += column * row;
  }
  const n = members.length;
  // With the moments of a pixel itself.
  const [a, b, c] = [xx / n - (x / n) ** 2 + 1 / 12, yy / n - (y / n) ** 2 + 1 / 12, xy / n - (x / n) * (y / n)];
  const root = Math.sqrt(((a - b) / 2) ** 2 + c * c);
  const [long, short] = [(a + b) / 2 + root, Math.max((a + b) / 2 - root, 1 / 12)];
  return { longMm: (4 * Math.sqrt(long)) / perMm, elongation: Math.sqrt(long / short), cut };
}
