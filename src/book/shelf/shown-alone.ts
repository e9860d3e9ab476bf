import { colourDoubt } from '../../learning/expected-difference.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import { USUAL_OPTICS } from '../../optics/optical-model.ts';
import { LADDER_MM } from '../../tables/material-defaults.ts';
import type { BookEye } from '../learning/book-eye.ts';
import type { Known } from '../model/known.ts';
import type { Material } from '../model/shelf.ts';
import type { MaterialCore } from './compile-material.ts';
import { doseLadder, markColour, typicalLook } from './dose-ladder.ts';

/** ΔE00 from which on two swatches beside each other are told apart for certain. Common practice, no source. */
const DIFFERS = 2;

/**
 * What a material looks like by itself, how that is known, and how surely.
 *
 * Before any look at it that is what its file says; what the book believes of it since it has learned from the others stands beside that
 * where the two differ visibly.
 *
 * @param plastic clear plastic of the shelf, if there is any
 */
export function shownAlone(
  material: MaterialCore,
  plastic: string | undefined,
  eye: BookEye,
): Pick<Material, 'hex' | 'ladder' | 'known' | 'sure' | 'learnedHex'> {
  const { learnedFrom, label, tier } = material;
  const known: Known = learnedFrom === undefined ? { how: tier } : { how: 'learned', looks: learnedFrom };
  const sure = sureOf(material, plastic, eye);
  if (label === undefined || learnedFrom !== undefined)
    return { hex: markColour(material, eye.optics), ladder: doseLadder(material, eye.optics), known, ...sure };
  const asLabelled = { ...material, constants: label };
  const beside = [typicalLook(asLabelled, USUAL_OPTICS), typicalLook(material, eye.optics)] as const;
  const [said, learned] = beside;
  const differs = said && learned && deltaE00(said.overWhite.lab, learned.overWhite.lab) >= DIFFERS;
  return {
    hex: markColour(asLabelled, USUAL_OPTICS),
    ladder: doseLadder(asLabelled, USUAL_OPTICS),
    known,
    ...sure,
    ...(differs ? { learnedHex: learned.overWhite.hex } : {}),
  };
}

/** How far its typical dose in clear plastic may be from what is believed of it. */
function sureOf(
  { id, typical, constants, kind }: MaterialCore,
  plastic: string | undefined,
  { belief }: BookEye,
): Pick<Material, 'sure'> {
  if (typical === undefined || !constants || kind === 'plastic' || plastic === undefined) return {};
  const layer = { plastics: [[plastic, 1]], contents: [[id, typical]], thicknessMm: LADDER_MM } as const;
  const { expected, bound90 } = colourDoubt(belief.of({ layers: [layer] }));
  return { sure: { expected: Number(expected.toFixed(2)), bound: Number(bound90.toFixed(2)) } };
}
