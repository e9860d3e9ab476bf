import { BURNT_LINE, SMOKING_LINE } from '../words/first-aid.ts';

/** Stands wherever a command tells somebody to heat. */
export const CAUTION = `Hot plastic burns; overheated, it gives off hydrogen chloride. Use a fume hood or open air, eye protection, gloves, sleeves and
a thermometer, keep water away, and read the suppliers' safety data sheets first. The page Care (care/) has all the cautions.
${BURNT_LINE}
${SMOKING_LINE}`;
