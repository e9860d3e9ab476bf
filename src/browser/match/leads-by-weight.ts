// Weighing leads where drops and spoons miss and it comes this much nearer, ΔE00 (convention of this book).
const CLEARLY_NEARER = 0.5;

/** Whether something is better weighed than dropped and spooned. */
export function leadsByWeight(deltaE: number, within: boolean, weighedDeltaE: number | undefined): boolean {
  return weighedDeltaE !== undefined && !within && weighedDeltaE < deltaE - CLEARLY_NEARER;
}
