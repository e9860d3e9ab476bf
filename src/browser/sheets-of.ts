/**
 * Which label lies at each place of each sheet.
 *
 * @param wanted how many there shall be of each label, whole numbers
 * @param perSheet places of a sheet
 * @example sheetsOf([2, 0, 1], 2) // [[0, 0], [2]]
 */
export function sheetsOf(wanted: readonly number[], perSheet: number): readonly (readonly number[])[] {
  const places = wanted.flatMap((count, label) => Array.from({ length: count }, () => label));
  return Array.from({ length: Math.ceil(places.length / perSheet) }, (_, sheet) =>
    places.slice(sheet * perSheet, (sheet + 1) * perSheet),
  );
}
