import { amountOf, concentrations } from '../../cup/ledger.ts';
import { required } from '../../values/required.ts';
import { cupFault, toleranceFault } from '../cup-fault.ts';
import type { MatchFault } from '../match-fault.ts';
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
  if (fault !== undefined) {
    const lost = shelf.get(question.material)?.title ?? question.material;
    return { advice: { kind: 'fault', fault }, lost, swaps: [], recipes: [], flakes: [] };
  }
  return required(shelf, question.material).flake
    ? flakeSubstitutes(question, shelf)
    : colourSubstitutes(question, shelf);
}

function questionFault(
  { cup, thicknessMm, material, tolerance }: SubstituteQuestion,
  shelf: ReadonlyMap<string, MatchMaterial>,
): MatchFault | undefined {
  const fault = cupFault(cup, new Set(shelf.keys())) ?? toleranceFault(tolerance);
  if (fault !== undefined) return fault;
  if (!(thicknessMm > 0)) return { kind: 'no-thickness' };
  if (amountOf(cup.plastics, material) > 0)
    return { kind: 'is-plastic', title: shelf.get(material)?.title ?? material };
  if (!(amountOf(concentrations(cup), material) > 0))
    return { kind: 'not-in-cup', title: shelf.get(material)?.title ?? material };
  const { constants, flake, title } = required(shelf, material);
  return constants || flake ? undefined : { kind: 'not-colouring', title };
}
