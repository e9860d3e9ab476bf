/**
 * What a colour or a target does beside being of a colour: fluorescent ones turn other light into their own, glowing ones shine in the dark, and
 * a shift is another colour from another side. No colour of this book says how much.
 *
 * @packageDocumentation
 */
export const EFFECTS = ['fluorescent', 'glow', 'shift'] as const;

export type Effect = (typeof EFFECTS)[number];
