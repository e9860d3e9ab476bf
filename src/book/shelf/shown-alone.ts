import type { BelievedCup } from '../../learning/asked-views.ts';
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
export const DIFFERS = 2;

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
  const { expected, bound90 } = colourDoubt(belief.of(typicalCup(id, typical, plastic)));
  return { sure: { expected: Number(expected.toFixed(2)), bound: Number(bound90.toFixed(2)) } };
}

/** A typical dose of a material in clear plastic, to be asked about. */
export function typicalCup(material: string, typical: number, plastic: string): BelievedCup {
  return { layers: [{ plastics: [[plastic, 1]], contents: [[material, typical]], thicknessMm: LADDER_MM }] };
}

/** The plastic in which materials are shown alone: the first of the shelf that turns clear. */
export function clearPlastic(shelf: Iterable<Pick<Material, 'id' | 'kind' | 'milky'>>): string | undefined {
  for (const { id, kind, milky } of shelf) if (kind === 'plastic' && !milky) return id;
  return undefined;
}

/** A plastic as it is. */
export function plainCup(plastic: string): BelievedCup {
  return { layers: [{ plastics: [[plastic, 1]], contents: [], thicknessMm: LADDER_MM }] };
}
