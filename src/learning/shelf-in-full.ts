import { foldedProblem } from './folded-looks.ts';
import type { LearnedShelf } from './learned-shelf.ts';
import { shelfPart } from './shelf-part.ts';
import { shelfProblem } from './shelf-problem.ts';

/** A learned shelf with those of its looks alone that its fit went by in full: of a few hundred looks all of them. See `folded-looks.ts`. */
export function shelfInFull(shelf: LearnedShelf): LearnedShelf {
  const { full, folded } = foldedProblem(shelfProblem(shelf.data));
  if (folded.cups.length === 0) return shelf;
  const kept = new Set(full.cups.map(({ cup }) => cup));
  return shelfPart(shelf, new Set(shelf.data.materials.map(({ id }) => id)), ({ cup }) => kept.has(cup));
}
