/** Stands wherever a command tells somebody to heat. */
export const CAUTION =
  "Hot plastic burns; overheated, it gives off hydrogen chloride. Use a fume hood or open air, eye protection, gloves, sleeves and\na thermometer, keep water away, and read the suppliers' safety data sheets first.";
