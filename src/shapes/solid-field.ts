/**
 * The side view of a bait in space: its ribbons swept, and joined without seams.
 *
 * @packageDocumentation
 */
import type { BaitField, FieldFrame } from './bait-field.ts';
import { pressDents } from './dents.ts';
import type { BaitSolid, SolidRibbon } from './solid.ts';
import { type Box, boxOf, denseRibbon, type Layer, paintRibbon, sectionTable } from './sweep.ts';

/** How flat the section of a thin part is: √(1 − |v|^p). */
const FLAT_EXPONENT = 3;

/** Over how much, mm, two ribbons flow into one another. */
const JOIN_MM = 1.6;

/** Paints a bait in space into a frame. */
export function solidField(solid: BaitSolid, frame: FieldFrame): BaitField {
  const size = frame.columns * frame.rows;
  const layer = newLayer(size);
  const sections = { round: sectionTable(solid.sectionExponent), flat: sectionTable(FLAT_EXPONENT) };
  const paint = (ribbon: SolidRibbon, into: Layer): Box => {
    const dense = denseRibbon(ribbon, frame);
    const box = boxOf(dense, frame);
    clear(into, box, frame);
    paintRibbon(dense, { ...sections, rings: ribbon.rings }, frame, into);
    return box;
  };
  const boxes = [paint(solid.trunk, layer)];
  for (const limb of solid.limbs) {
    const scratch = scratchOf(size);
    const box = paint(limb, scratch);
    join(layer, scratch, box, frame);
    boxes.push(box);
  }
  const { thicknessMm, liftMm: heightMm } = layer;
  for (let at = 0; at < size; at++) {
    if (thicknessMm[at]! > solid.bodyMm) thicknessMm[at] = solid.bodyMm;
    heightMm[at] = heightMm[at]! + thicknessMm[at]! / 2;
  }
  const { cover, alongMm, across, halfMm, part } = layer;
  const { columns, rows, pixelsPerMm, noseX, noseY } = frame;
  const placed = { columns, rows, pixelsPerMm, noseX, noseY };
  pressDents(solid, { ...placed, cover, heightMm }, around(boxes));
  return { ...placed, cover, thicknessMm, alongMm, across, halfMm, part, heightMm };
}

function around(boxes: readonly Box[]): Box {
  return {
    left: Math.min(...boxes.map(({ left }) => left)),
    right: Math.max(...boxes.map(({ right }) => right)),
    top: Math.min(...boxes.map(({ top }) => top)),
    bottom: Math.max(...boxes.map(({ bottom }) => bottom)),
  };
}

/** The layer that limbs are painted into, kept from bait to bait: a fresh one costs more than what is painted. */
let kept: Layer | undefined;

function scratchOf(size: number): Layer {
  if (kept === undefined || kept.cover.length < size) kept = newLayer(size);
  return kept;
}

function newLayer(size: number): Layer {
  const numbers = (): Float32Array => new Float32Array(size);
  return {
    cover: numbers(),
    thicknessMm: numbers(),
    alongMm: numbers(),
    across: numbers(),
    halfMm: numbers(),
    part: new Uint8Array(size),
    liftMm: numbers(),
  };
}

/** Empties what a ribbon may write: whatever has no cover has nothing. */
function clear(layer: Layer, box: Box, { columns }: FieldFrame): void {
  for (let row = box.top; row < box.bottom; row++) {
    layer.cover.fill(0, row * columns + box.left, row * columns + box.right);
    layer.thicknessMm.fill(0, row * columns + box.left, row * columns + box.right);
  }
}

/** Joins a limb to what is painted already: the smooth maximum of both, without a step where either begins. */
function join(layer: Layer, limb: Layer, box: Box, { columns }: FieldFrame): void {
  for (let row = box.top; row < box.bottom; row++) {
    for (let at = row * columns + box.left; at < row * columns + box.right; at++) {
      const cover = limb.cover[at]!;
      if (cover === 0) continue;
      const own = layer.thicknessMm[at]!;
      const other = limb.thicknessMm[at]!;
      const less = Math.min(own, other);
      const near = Math.max(0, JOIN_MM - Math.abs(own - other)) / JOIN_MM;
      const swell = ((JOIN_MM * near * near) / 4) * Math.min(1, less / (0.6 * JOIN_MM));
      const both = own + other;
      layer.liftMm[at] = both > 0 ? (layer.liftMm[at]! * own + limb.liftMm[at]! * other) / both : limb.liftMm[at]!;
      layer.thicknessMm[at] = own + other - less + swell;
      if (cover > layer.cover[at]!) layer.cover[at] = cover;
      if (other > own || both === 0) {
        layer.alongMm[at] = limb.alongMm[at]!;
        layer.across[at] = limb.across[at]!;
        layer.halfMm[at] = limb.halfMm[at]!;
        layer.part[at] = limb.part[at]!;
      }
    }
  }
}
