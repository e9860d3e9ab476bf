/** Flakes of all drawings of a page together, and the most and the fewest that one gets. */
const PAGE_BUDGET = 8000;
const MOST = 72;
const FEWEST = 12;

/** Flakes that each of so many drawings of a page may have, so that a page of thousands still loads. */
export function flakeBudget(drawings: number): number {
  return Math.max(FEWEST, Math.min(MOST, Math.floor(PAGE_BUDGET / Math.max(drawings, 1))));
}
