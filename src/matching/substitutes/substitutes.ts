import { concentrations, isEmpty } from '../../cup/ledger.ts';
import { required } from '../../values/required.ts';
import { type MatchMaterial, shelfByName } from '../shelf/match-material.ts';
import { colourSubstitutes } from './colour-substitutes.ts';
import { flakeSubstitutes } from './flake-substitutes.ts';
import type { SubstituteQuestion, Substitution } from './substitution.ts';

/**
 * What can stand for a material in a cup: the nearest by what it does there, the cup worked out anew without it, and for flake the
 * nearest by colour, size and finish, as much of it as covers the same.
 *
 * Never throws for what a maker gives.
 */
export function substitutes(question: SubstituteQuestion): Substitution {
  const shelf = shelfByName(question.shelf);
  const fault = questionFault(question, shelf);
  if (fault !== undefined) return { advice: 'fault', sentence: fault, swaps: [], recipes: [], flakes: [] };
  return required(shelf, question.material).flake
    ? flakeSubstitutes(question, shelf)
    : colourSubstitutes(question, shelf);
}

function questionFault(
  { cup, thicknessMm, material, tolerance }: SubstituteQuestion,
  shelf: ReadonlyMap<string, MatchMaterial>,
): string | undefined {
  const unknown = [...Object.keys(cup.plastics), ...Object.keys(cup.materials)].find((name) => !shelf.has(name));
  if (unknown !== undefined)
    return `The cup has ${unknown} in it, which is not on the shelf. Put it there, so that its colour is known.`;
  if (isEmpty(cup)) return 'The cup is empty. Give it plastic first.';
  if (!(thicknessMm > 0 && tolerance > 0)) return 'The thickness and the tolerance must be above 0.';
  if (!((concentrations(cup)[material] ?? 0) > 0))
    return `There is no ${shelf.get(material)?.title ?? material} in this cup.`;
  const { constants, flake, title } = required(shelf, material);
  return constants || flake
    ? undefined
    : `${title} does not colour, so nothing can be found for it by colour. Its own page says what it is for.`;
}
