/**
 * K and S of a material from whatever is known of it, best first: measured spectra, photographed chips, one colour and a
 * kind. The result says which, and how far to trust it; a maker's error is a fault value, never a throw.
 */
export { fromChip, fromChips } from './from-chips.ts';
export { fromColourAndKind, type MaterialKind, type StatedColour } from './from-colour-and-kind.ts';
export { fromSpectra, type MeasuredChip } from './from-spectra.ts';
export type { MaterialConstants, MaterialResult } from './material-tier.ts';
