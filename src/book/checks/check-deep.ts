/**
 * What is so dark that it tells nothing of how strong a bottle is: twice as much of it would look the same.
 *
 * @packageDocumentation
 */
import type { Lab } from '../../optics/cielab.ts';
import { required } from '../../values/required.ts';
import type { ChipSpec } from '../cups/chip-spec.ts';
import type { FilledCup, FilledRound } from '../cups/fill-cup.ts';
import { labelsOf } from '../learning/material-labels.ts';
import type { Prepared } from '../prepare-book.ts';
import type { Things } from '../read/read-things.ts';
import type { Report } from '../report.ts';

// L* at and below which a view is as good as black: about what 3 % of the light makes. Convention of this book.
const DEEP = 20;

interface Views {
  readonly overWhite?: Lab;
  readonly overBlack?: Lab;
}

/** Reports labels and own chips that are as good as black in every view; of a label only until something lighter was seen of the bottle. */
export function checkDeep(things: Things, { shelf, filled, filledChips }: Prepared, report: Report): void {
  const lighter = new Set(
    [...filled.values(), ...filledChips.values()].flatMap(({ rounds }) => rounds.flatMap(lighterIn)),
  );
  for (const material of shelf.values()) {
    const thing = required(things.materials, material.id);
    const labels = material.tier === 'measured' ? [] : labelsOf(thing, material);
    if (labels.length === 0 || !labels.every(isDeep) || lighter.has(material.id)) continue;
    report.add('material/deep', thing, ['look'], {
      found: `look of ${material.title} that is as good as black`,
      expected: 'a look that twice as much would make darker',
      why: 'nobody can tell from it how strong the bottle is, and mixtures with little of it are guesses',
      fix: 'pour a chip with a quarter of the dose, 6 mm thick, look at it on both cards, and put it into chips/',
    });
  }
  for (const chip of filledChips.values()) checkChip(chip, report);
}

function checkChip({ spec, rounds }: FilledCup<ChipSpec>, report: Report): void {
  const looks = rounds.flatMap((round) => round.seen.map(labsOf)).filter(hasView);
  if (looks.length === 0 || !looks.every(isDeep)) return;
  report.add('chip/deep', spec.recipe, [spec.fields.log ? 'log' : 'seen'], {
    found: 'chip that is as good as black',
    expected: 'a chip that twice as much would make darker',
    why: 'this one teaches next to nothing of how strong its bottles are',
    fix: 'pour another one with a quarter of the dose, 6 mm thick',
  });
}

/** What is in a cup that was seen lighter than that. */
function lighterIn({ cup, seen }: FilledRound): readonly string[] {
  const looks = seen.map(labsOf).filter(hasView);
  return looks.some((look) => !isDeep(look)) ? Object.keys(cup.materials) : [];
}

const labsOf = ({ overWhite, overBlack }: FilledRound['seen'][number]): Views => ({
  ...(overWhite ? { overWhite: overWhite.lab } : {}),
  ...(overBlack ? { overBlack: overBlack.lab } : {}),
});

const hasView = ({ overWhite, overBlack }: Views): boolean => overWhite !== undefined || overBlack !== undefined;

const isDeep = ({ overWhite, overBlack }: Views): boolean =>
  [overWhite, overBlack].every((view) => view === undefined || view.L <= DEEP);
