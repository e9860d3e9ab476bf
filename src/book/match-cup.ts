import { UNITS } from '../units/unit.ts';

/** Plastic of a cup that a match begins with, ml, by the book's unit: 120 ml or 4 fl oz. A small cup; common practice, no source. */
export const MATCH_CUP_ML = { ml: 120, 'fl oz': 4 * UNITS['fl oz'].size } as const;
