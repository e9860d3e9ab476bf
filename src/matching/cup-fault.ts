import { type CupState, isEmpty } from '../cup/ledger.ts';
import type { MatchFault } from './match-fault.ts';

/** What is wrong with a cup that is asked about; undefined where its amounts are numbers of what is on the shelf. */
export function cupFault(cup: CupState, shelf: ReadonlySet<string>): MatchFault | undefined {
  const inCup = [...Object.entries(cup.plastics), ...Object.entries(cup.materials)];
  const unknown = inCup.find(([name]) => !shelf.has(name));
  if (unknown !== undefined) return { kind: 'not-on-shelf', material: unknown[0] };
  if (!inCup.every(([, amount]) => Number.isFinite(amount) && amount >= 0)) return { kind: 'no-amount' };
  return isEmpty(cup) ? { kind: 'empty-cup' } : undefined;
}

/** The same of the largest ΔE00 that counts as a match. */
export function toleranceFault(tolerance: number): MatchFault | undefined {
  return tolerance > 0 && Number.isFinite(tolerance) ? undefined : { kind: 'no-tolerance' };
}
