/**
 * The colour of a flake through the plastic above it: in 36 bands, through every layer, looked up rather than computed for each flake.
 *
 * @packageDocumentation
 */

import { NO_PATH } from '../../optics/optical-model.ts';
import { BAND_COUNT, type Spectrum } from '../../optics/spectrum.ts';
import { alongPath, coverWithLayers, type Layer } from '../../optics/stack.ts';
import { BESIDE_GLOSS } from '../../optics/surface.ts';
import type { Run } from '../../patterns/place.ts';
import { writeLinear } from '../colour/linear-weights.ts';
import type { PicturedBait } from '../pictured-bait.ts';

/** Linear sRGB of a flake's face through the plastic, then that of a black face there: what the plastic above shows by itself. */
export const FACE_AND_VEIL = 6;

/** Nodes: of the thickness, and of the place in the flake's own run. Both go with the square, since colours change fast near the surface. */
const THICKNESSES = 9;
const DEPTHS = 13;

/** Where runs hang on the place, as round a core, their parts are taken in so many steps. */
const STEPS = 32;

/** Colours of one kind of flake in a bait. */
export class FlakeColours {
  private readonly bait: Pick<PicturedBait, 'cups' | 'optics'>;
  private readonly reflectance: readonly number[];
  private readonly mostMm: number;
  private readonly tables = new Map<string, Float64Array>();
  private last: { readonly runs: readonly Run[]; readonly run: number; readonly nodes: Float64Array } | undefined;

  constructor(bait: Pick<PicturedBait, 'cups' | 'optics'>, reflectance: readonly number[], mostMm: number) {
    this.bait = bait;
    this.reflectance = reflectance;
    this.mostMm = mostMm;
  }

  /**
   * Writes six numbers: a flake's face, and a black one, at a place.
   *
   * @param runs what the line of sight runs through, the near cup first; @param run the one that the flake is in
   * @param mm thickness of the bait there; @param deep plastic above the flake as a part of it
   */
  write(runs: readonly Run[], run: number, mm: number, deep: number, out: Float64Array): void {
    const nodes = this.nodesOf(runs, run);
    let from = 0;
    for (let i = 0; i < run; i++) from += runs[i]!.part;
    const thick = (THICKNESSES - 1) * Math.sqrt(Math.min(1, mm / this.mostMm));
    const place = (DEPTHS - 1) * Math.sqrt(Math.min(1, Math.max(0, (deep - from) / runs[run]!.part)));
    const t = Math.min(THICKNESSES - 2, Math.floor(thick));
    const d = Math.min(DEPTHS - 2, Math.floor(place));
    const [ft, fd] = [thick - t, place - d];
    const thin = this.node(nodes, runs, run, t, d);
    const thinDeep = this.node(nodes, runs, run, t, d + 1);
    const thicker = this.node(nodes, runs, run, t + 1, d);
    const thickerDeep = this.node(nodes, runs, run, t + 1, d + 1);
    for (let i = 0; i < FACE_AND_VEIL; i++) {
      const upper = nodes[thin + i]! * (1 - ft) + nodes[thicker + i]! * ft;
      const lower = nodes[thinDeep + i]! * (1 - ft) + nodes[thickerDeep + i]! * ft;
      out[i] = upper * (1 - fd) + lower * fd;
    }
  }

  /** The largest of linear red, green and blue of a flake just below the surface of a cup. */
  lightest(cup: number): number {
    const out = new Float64Array(FACE_AND_VEIL);
    writeFlake(this.bait, this.reflectance, { runs: [{ cup, part: 1 }], run: 0, mm: 0, inRun: 0 }, out, 0);
    return Math.max(out[0]!, out[1]!, out[2]!);
  }

  private nodesOf(runs: readonly Run[], run: number): Float64Array {
    const { last } = this;
    if (last && last.runs === runs && last.run === run) return last.nodes;
    const key = `${run} ${runs.map(({ cup, part }) => `${cup}:${Math.round(part * STEPS)}`).join(' ')}`;
    let nodes = this.tables.get(key);
    if (nodes === undefined) {
      nodes = new Float64Array(THICKNESSES * DEPTHS * FACE_AND_VEIL).fill(Number.NaN);
      this.tables.set(key, nodes);
    }
    this.last = { runs, run, nodes };
    return nodes;
  }

  /** Where a node's numbers begin; they are computed when they are first asked for. */
  private node(nodes: Float64Array, runs: readonly Run[], run: number, thickness: number, depth: number): number {
    const at = (thickness * DEPTHS + depth) * FACE_AND_VEIL;
    if (Number.isNaN(nodes[at])) {
      const mm = this.mostMm * (thickness / (THICKNESSES - 1)) ** 2;
      const inRun = (depth / (DEPTHS - 1)) ** 2;
      writeFlake(this.bait, this.reflectance, { runs, run, mm, inRun }, nodes, at);
    }
    return at;
  }
}

/** Where a flake lies on a line of sight: in which run, so far in it as a part, of a bait so thick. */
export interface FlakePlace {
  readonly runs: readonly Run[];
  readonly run: number;
  readonly mm: number;
  readonly inRun: number;
}

/** Writes a flake's face, and a black one, at a place, directly. */
export function writeFlake(
  { cups, optics: { path } }: Pick<PicturedBait, 'cups' | 'optics'>,
  reflectance: ArrayLike<number>,
  { runs, run, mm, inRun }: FlakePlace,
  out: Float64Array,
  at: number,
): void {
  // A flake lies in the light of the whole bait, however little plastic is before it.
  const layers = alongPath(
    runs.map(({ cup, part }): Layer => ({ ...cups[cup]!, flakes: [], thickness: part * mm })),
    path,
  );
  const above = layers
    .slice(0, run + 1)
    .map((layer, index) => (index < run ? layer : { ...layer, thickness: layer.thickness * inRun }));
  FACE.set(reflectance);
  BLACK.fill(0);
  coverWithLayers(above, BOTH, BESIDE_GLOSS, NO_PATH);
  writeLinear(FACE, out, at);
  writeLinear(BLACK, out, at + 3);
}

const FACE: Spectrum = new Float64Array(BAND_COUNT);
const BLACK: Spectrum = new Float64Array(BAND_COUNT);
const BOTH = [FACE, BLACK];
