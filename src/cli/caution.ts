/** Stands wherever a command tells somebody to heat. */
export const CAUTION =
  "Hot plastic burns, and overheated it gives off hydrogen chloride: fume hood or open air, eye protection, gloves and sleeves,\na thermometer, no water near it, and the suppliers' safety data sheets first.";
