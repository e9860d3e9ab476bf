import type { LedgerStep, PartStep } from './ledger.ts';

/** What went into a cup: grams, and the dose as it is written. */
export interface LoggedAmount {
  /** A material or a cut. */
  readonly material: string;
  readonly dose: string;
  readonly grams: number;
  /** Of a cut: what is in so much of it. */
  readonly parts?: readonly PartStep[];
}

/** What an amount is to the ledger: of a cut, its two parts. */
export function stepOfAmount({ material, grams, parts }: LoggedAmount): Exclude<LedgerStep, { kind: 'pour' }> {
  return parts ? { kind: 'cut', cut: material, grams, parts } : { kind: 'add', material, grams };
}

/** The materials and plastics that go into a cup with amounts. */
export function namesInAmounts(amounts: readonly LoggedAmount[]): readonly string[] {
  return amounts.flatMap(({ material, parts }) => parts?.map((part) => part.material) ?? [material]);
}

/** Plastic that goes in with cuts, ml. */
export function plasticInCuts(amounts: readonly LoggedAmount[]): number {
  const parts = amounts.flatMap((amount) => amount.parts ?? []);
  return parts.reduce((sum, part) => sum + (part.kind === 'plastic' ? part.ml : 0), 0);
}
