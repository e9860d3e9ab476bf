/**
 * The body of a zone at each of its places, with the highlights that run along a bait.
 *
 * @packageDocumentation
 */
import { oklabDistance, writeOklab } from '../bait/oklab.ts';
import type { Patch } from '../bait/rectify.ts';
import { CHANNELS } from '../channels.ts';

/**
 * Along a bait its body changes slowly, across it fast: a lamp draws a streak along what is round. So each band of a zone, so high, has nodes
 * so far apart, and each of them is found from its own band alone, so far to either side. All mm.
 */
const BAND_MM = 0.1;
const NODE_MM = 1;
const REACH_MM = 6;
const NEAR_MM = 2;

/** Pixels that a node is found from, at most. */
const SAMPLES = 60;

/** Pixels within this distance of one another hang together, and one further off than this from a node has no part in it: OKLab. */
const TOGETHER = 0.025;
const PART = 0.06;
const ROUNDS = 3;

/** A node that flake has taken is told by its neighbours: so many bands and nodes to each side. */
const BANDS_BESIDE = 2;
const NODES_BESIDE = 1;

/** The body's light at each pixel, as a part of paper's, three numbers. */
export function lengthwiseBody({ columns, rows, perMm, signal }: Patch, lab: Float32Array): Float32Array {
  const bandRows = Math.max(1, Math.round(BAND_MM * perMm));
  const bands = Math.ceil(rows / bandRows);
  const across = Math.max(2, Math.round(columns / perMm / NODE_MM) + 1);
  const step = (columns - 1) / (across - 1);
  const nodes = new Float32Array(3 * bands * across);
  const at = (band: number, node: number): number => 3 * (band * across + node);
  const samplesOf = (band: number, node: number): readonly number[] => {
    const from = Math.max(0, Math.round(node * step - REACH_MM * perMm));
    const to = Math.min(columns, Math.round(node * step + REACH_MM * perMm) + 1);
    const [first, last] = [band * bandRows, Math.min(rows, (band + 1) * bandRows)];
    const count = (to - from) * (last - first);
    const stride = Math.max(1, count / SAMPLES);
    return Array.from({ length: Math.floor(count / stride) }, (_, i) => {
      const place = Math.floor((i + 0.5) * stride);
      return (first + (place % (last - first))) * columns + from + Math.floor(place / (last - first));
    });
  };
  for (let band = 0; band < bands; band++)
    for (let node = 0; node < across; node++) {
      const most = densest(lab, samplesOf(band, node));
      for (let i = 0; i < 3; i++) nodes[at(band, node) + i] = signal[3 * most + i]!;
    }
  const steady = medians(nodes, bands, across);
  const middle = new Float32Array(3);
  for (let band = 0; band < bands; band++)
    for (let node = 0; node < across; node++) {
      const samples = samplesOf(band, node);
      const here = at(band, node);
      for (let round = 0; round < ROUNDS; round++) {
        writeOklab(steady[here]!, steady[here + 1]!, steady[here + 2]!, middle, 0);
        const sum = [0, 0, 0, 0];
        for (const sample of samples) {
          const off = oklabDistance(lab, 3 * sample, middle, 0) / PART;
          if (off >= 1) continue;
          const beside = ((sample % columns) - node * step) / (NEAR_MM * perMm);
          const weight = (1 - off * off) ** 2 * Math.exp((-beside * beside) / 2);
          for (let i = 0; i < 3; i++) sum[i]! += weight * signal[3 * sample + i]!;
          sum[3]! += weight;
        }
        if (sum[3]! < 1) break;
        for (let i = 0; i < 3; i++) steady[here + i] = sum[i]! / sum[3]!;
      }
    }
  const out = new Float32Array(signal.length);
  for (let row = 0; row < rows; row++) {
    const place = Math.min(bands - 1, Math.max(0, (row + 0.5) / bandRows - 0.5));
    const band = Math.max(0, Math.min(bands - 2, Math.floor(place)));
    const [down, below] = [bands > 1 ? place - band : 0, bands > 1 ? band + 1 : band];
    for (let column = 0; column < columns; column++) {
      const node = Math.min(across - 2, Math.floor(column / step));
      const right = column / step - node;
      for (let i = 0; i < CHANNELS.length; i++) {
        const upper = steady[at(band, node) + i]! * (1 - right) + steady[at(band, node + 1) + i]! * right;
        const lower = steady[at(below, node) + i]! * (1 - right) + steady[at(below, node + 1) + i]! * right;
        out[3 * (row * columns + column) + i] = upper * (1 - down) + lower * down;
      }
    }
  }
  return out;
}

/** Of some pixels the one that has most others near it. */
function densest(lab: Float32Array, samples: readonly number[]): number {
  let [best, most] = [samples[0] ?? 0, -1];
  for (const one of samples) {
    let near = 0;
    for (const other of samples) {
      const off = oklabDistance(lab, 3 * one, lab, 3 * other) / TOGETHER;
      if (off < 2) near += Math.exp((-off * off) / 2);
    }
    if (near > most) [most, best] = [near, one];
  }
  return best;
}

/** Each node as the middle one of those around it, channel by channel. */
function medians(nodes: Float32Array, bands: number, across: number): Float32Array {
  const out = new Float32Array(nodes.length);
  for (let band = 0; band < bands; band++)
    for (let node = 0; node < across; node++)
      for (let i = 0; i < 3; i++) {
        const around: number[] = [];
        for (let b = Math.max(0, band - BANDS_BESIDE); b <= Math.min(bands - 1, band + BANDS_BESIDE); b++)
          for (let n = Math.max(0, node - NODES_BESIDE); n <= Math.min(across - 1, node + NODES_BESIDE); n++)
            around.push(nodes[3 * (b * across + n) + i]!);
        around.sort((one, other) => one - other);
        out[3 * (band * across + node) + i] = around[Math.floor(around.length / 2)]!;
      }
  return out;
}
