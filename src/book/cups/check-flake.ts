import { tooNarrow } from '../../cup/flake-passage.ts';
import type { FieldPath } from '../../recipe/field-path.ts';
import { lengthText } from '../../units/length-text.ts';
import { required } from '../../values/required.ts';
import type { Mold } from '../model/shelf.ts';
import type { Settings } from '../model.ts';
import type { Report } from '../report.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';
import type { FilledCup } from './fill-cup.ts';
import { placeInCup } from './place-in-cup.ts';

type Way = Pick<Mold, 'title' | 'gateMm' | 'thinMm' | 'thinPart' | 'source'>;

/**
 * Reports each flake of a cup that jams in the gate or the thin part of its mold: where the recipe gives the flake, or else the mold that it
 * has of its own. A recipe that has both from another is told of there.
 */
export function checkFlake(
  { spec, state }: Pick<FilledCup, 'spec' | 'state'>,
  mold: Way,
  shelf: ReadonlyMap<string, MaterialCore>,
  settings: Pick<Settings, 'volume'>,
  report: Report,
): void {
  const length = (mm: number): string => lengthText(mm, settings);
  for (const [id, grams] of Object.entries(state.materials)) {
    const { flake, title } = required(shelf, id);
    const narrow = flake && grams > 0 && tooNarrow(flake.acrossMm, mold);
    const place = placeOf(spec, id);
    if (!flake || !narrow || !place) continue;
    const { at, mm, leastMm } = narrow;
    const isGate = at === 'gate';
    report.add('recipe/large-flake', spec.recipe, place, {
      found: `${title}, ${length(flake.acrossMm)} across, in ${mold.title}, which has ${isGate ? `a gate ${length(mm)} wide` : `${mold.thinPart} ${length(mm)} thick`}`,
      expected: isGate
        ? `a gate at least ${length(leastMm)} wide, twice the flake (common practice, no source)`
        : `${mold.thinPart} at least ${length(leastMm)} thick, as much as the flake (common practice, no source)`,
      why: 'it jams there: at first no flake comes through, and then all of it at once',
      fix: `use a smaller flake or another mold, or correct \`${at}\` in ${mold.source.path}`,
    });
  }
}

function placeOf(spec: FilledCup['spec'], id: string): FieldPath | undefined {
  const own = placeInCup(spec, id);
  if (own) return own;
  const { mold, from } = spec.recipe.fields;
  if (mold !== undefined) return ['mold'];
  return spec.from?.recipe === from ? undefined : spec.path;
}
