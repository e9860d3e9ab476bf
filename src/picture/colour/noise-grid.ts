import type { FieldFrame } from '../../shapes/bait-field.ts';

/** Places of the plane at which noise is computed lie so far apart, mm; between them it runs straight. */
const STEP_MM = 0.6;

/** Kinds of noise at a place. */
export const KINDS = 3;

/** Writes the noises at a place, mm from the bait's nose. */
type NoisesAt = (x: number, y: number, out: Float64Array, at: number) => void;

/** Noises over a picture, computed at few places, and only where they are asked for. The places are those of the bait, whatever its size in pixels. */
export class NoiseGrid {
  private readonly frame: FieldFrame;
  private readonly noises: NoisesAt;
  private readonly firstColumn: number;
  private readonly firstRow: number;
  private readonly width: number;
  private readonly values: Float64Array;
  private readonly isKnown: Uint8Array;
  // Between which places the last pixel was.
  private column = Number.NaN;
  private row = Number.NaN;
  private readonly corners = new Int32Array(4);

  constructor(frame: FieldFrame, noises: NoisesAt) {
    const { columns, rows, noseX, noseY, pixelsPerMm } = frame;
    const perMm = pixelsPerMm * STEP_MM;
    this.frame = frame;
    this.noises = noises;
    this.firstColumn = Math.floor((0.5 - noseX) / perMm);
    this.firstRow = Math.floor((0.5 - noseY) / perMm);
    this.width = Math.floor((columns - 0.5 - noseX) / perMm) - this.firstColumn + 2;
    const height = Math.floor((rows - 0.5 - noseY) / perMm) - this.firstRow + 2;
    this.values = new Float64Array(KINDS * this.width * height);
    this.isKnown = new Uint8Array(this.width * height);
  }

  /** Writes the noises at a pixel. Quick where it lies beside the last one. */
  read(pixel: number, out: Float64Array): void {
    const { columns, noseX, noseY, pixelsPerMm } = this.frame;
    const x = ((pixel % columns) + 0.5 - noseX) / pixelsPerMm / STEP_MM;
    const y = (((pixel / columns) | 0) + 0.5 - noseY) / pixelsPerMm / STEP_MM;
    const column = Math.floor(x);
    const row = Math.floor(y);
    if (column !== this.column || row !== this.row) this.goTo(column, row);
    const { values, corners } = this;
    const fx = x - column;
    const fy = y - row;
    for (let kind = 0; kind < KINDS; kind++) {
      const upper = values[corners[0]! + kind]! * (1 - fx) + values[corners[1]! + kind]! * fx;
      const lower = values[corners[2]! + kind]! * (1 - fx) + values[corners[3]! + kind]! * fx;
      out[kind] = upper * (1 - fy) + lower * fy;
    }
  }

  private goTo(column: number, row: number): void {
    this.column = column;
    this.row = row;
    for (let corner = 0; corner < 4; corner++)
      this.corners[corner] = this.place(column + (corner & 1), row + (corner >> 1));
  }

  private place(column: number, row: number): number {
    const cell = (row - this.firstRow) * this.width + column - this.firstColumn;
    const at = KINDS * cell;
    if (this.isKnown[cell] === 0) {
      this.noises(column * STEP_MM, row * STEP_MM, this.values, at);
      this.isKnown[cell] = 1;
    }
    return at;
  }
}
