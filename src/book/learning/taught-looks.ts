import { type CupState, total } from '../../cup/ledger.ts';
import type { TaughtLook } from '../../learning/learning-data.ts';
import { CHIP_MM } from '../../tables/material-defaults.ts';
import type { ChipSpec } from '../cups/chip-spec.ts';
import type { CupSpec } from '../cups/cup-specs.ts';
import type { FilledCup } from '../cups/fill-cup.ts';
import { compileLook } from '../looks/compile-look.ts';
import { baitLookKey, lookKey, roundCupKey } from './cup-keys.ts';
import { keptLook } from './kept-look.ts';
import { lookedBait } from './looked-bait.ts';
import { lookedLayer } from './looked-layer.ts';
import type { LookedRecipe } from './looked-recipe.ts';

/**
 * All looks of a recipe that say a colour: at its cups, round by round, those of a cup that was given up among them, each look at a pour
 * by itself; and at the finished bait.
 *
 * @param colours whether a material of that name does anything to a colour
 */
export function taughtLooks(recipe: LookedRecipe, colours: (material: string) => boolean): readonly TaughtLook[] {
  return [...recipe.cups.flatMap((cup) => cupLooks(cup, recipe.bodyMm, colours)), ...baitLooks(recipe, colours)];
}

/** All looks at a chip that say a colour, as those at the cup of a recipe. */
export function chipLooks(chip: FilledCup<ChipSpec>, colours: (material: string) => boolean): readonly TaughtLook[] {
  return cupLooks(chip, CHIP_MM, colours);
}

function cupLooks(
  cup: FilledCup<CupSpec | ChipSpec>,
  bodyMm: number,
  colours: (material: string) => boolean,
): readonly TaughtLook[] {
  return cup.rounds.flatMap((round) => {
    const key = roundCupKey(cup, round.number);
    return isPlastic(round.cup)
      ? round.seen.flatMap((look, index): TaughtLook[] => {
          const seen = keptLook(look);
          if (!seen) return [];
          const layers = [lookedLayer(round.cup, look.thicknessMm ?? bodyMm, colours)];
          return [{ key: lookKey(cup, round.number, index), cup: key, round: round.number, layers, ...seen }];
        })
      : [];
  });
}

function baitLooks(recipe: LookedRecipe, colours: (material: string) => boolean): readonly TaughtLook[] {
  return (recipe.recipe.fields.seen ?? []).flatMap((fields, index): TaughtLook[] => {
    const seen = keptLook(compileLook(fields));
    const bait = seen && lookedBait(recipe, fields, colours);
    if (!seen || !bait) return [];
    return [{ key: baitLookKey(recipe.recipe.id, index), ...bait, ...seen }];
  });
}

const isPlastic = ({ plastics }: CupState): boolean => total(plastics) > 0;
