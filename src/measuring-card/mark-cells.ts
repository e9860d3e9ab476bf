/**
 * Codes of the marks in use, 36 bits, row by row from the left top; a 1 is white.
 *
 * Source: the dictionary ARUCO_MIP_36h12 as js-aruco2 2.0.0 has it (`src/aruco.js`, MIT), by S. Garrido-Jurado, R. Muñoz-Salinas,
 * F. J. Madrid-Cuevas and R. Medina-Carnicer, "Generation of fiducial marker dictionaries using Mixed Integer Linear Programming",
 * Pattern Recognition 51, 2016 (cited from memory). A test holds these against the library.
 */
const CODES: ReadonlyMap<number, number> = new Map([
  [4, 0x85da9bc49],
  [9, 0x8ea462ece],
  [27, 0x0424bccc9],
  [50, 0x735b91e74],
  [101, 0x891cbcf34],
  [120, 0xbf2e5dfda],
  [200, 0xa3868efa7],
  [222, 0xaa4f04e49],
]);

/** Cells across a code; with the black border around them a mark is two more across. */
export const CODE_CELLS = 6;

/**
 * The cells of a mark's code by row and column: whether each is white.
 *
 * Throws: RangeError if no card has such a mark.
 */
export function markCells(id: number): readonly (readonly boolean[])[] {
  const code = CODES.get(id);
  if (code === undefined) throw new RangeError(`mark ${id} has no code here: add it from the dictionary`);
  const bits = code.toString(2).padStart(CODE_CELLS ** 2, '0');
  return Array.from({ length: CODE_CELLS }, (_, row) =>
    Array.from({ length: CODE_CELLS }, (_, column) => bits[row * CODE_CELLS + column] === '1'),
  );
}
