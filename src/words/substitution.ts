import type { Substitute, Substitution } from '../matching/substitutes/substitution.ts';
import type { VolumeUnit } from '../units/volume-text.ts';
import { amountsText } from './amount.ts';
import { expectationText } from './expectation.ts';
import { flakeText } from './flake.ts';
import { matchFaultText } from './match-fault.ts';
import { hitches } from './proposal.ts';
import { verdictText } from './verdict.ts';

/** What to do without a material. */
export function substitutionText(answer: Substitution, units: VolumeUnit): string {
  return [adviceText(answer, units), ...hitches(undefined, answer.byHand, units)].join(' ');
}

function adviceText({ advice, lost, swaps, recipes, flakes }: Substitution, units: VolumeUnit): string {
  const [swap] = swaps;
  const [recipe] = recipes;
  const [flake] = flakes;
  switch (advice.kind) {
    case 'fault':
      return matchFaultText(advice.fault, units);
    case 'leave-out':
      return `Leave ${lost} out: without it the cup stays within tolerance, ${expectationText(advice)}.`;
    case 'swap':
      return flake
        ? `Closest to ${lost}: ${flake.title} (${flakeText(flake, units)}). ${flake.text} of it shows as much.`
        : `Closest to ${lost} here is ${nearText(swap!)}.`;
    case 're-solve':
      return `No single material does what ${lost} does here. Remix the cup without it, with ${nearText(recipe!)}.`;
    case 'cannot':
      switch (advice.because) {
        case 'no-other-flake':
          return 'There is no other flake on the shelf.';
        case 'another-colour':
          return advice.nearest
            ? `Nothing on the shelf can replace ${lost} here. The closest is ${nearText(advice.nearest)}.`
            : `Nothing on the shelf can replace ${lost} here.`;
        case 'not-near':
          return advice.nearest === 'swap'
            ? `Nothing on the shelf replaces ${lost} here within tolerance. The closest is ${nearText(swap!)}.`
            : `Nothing on the shelf replaces ${lost} here within tolerance. The closest is to remix the cup without it, with ${nearText(recipe!)}.`;
      }
  }
}

/** "3 drops of Mill Blue: easy to see (expect ΔE 3.9, nine in ten within 6.2)" */
function nearText(substitute: Substitute): string {
  return `${amountsText(substitute.amounts)}: ${expectationText(substitute)}`;
}

/** A substitute beside the cup with the material: "3 drops of Mill Blue; too red, a touch light: easy to see (ΔE 3.9)". */
export function substituteText(substitute: Substitute): string {
  return `${amountsText(substitute.amounts)}; ${verdictText(substitute.left, substitute)}`;
}
