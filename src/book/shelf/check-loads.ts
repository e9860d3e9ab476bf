import { MATERIAL_KINDS } from '../../kinds/kinds.ts';
import { TOGETHER } from '../../kinds/together.ts';
import { fullness, type Sort, sortOf, usualMost } from '../../matching/shelf/together.ts';
import type { FieldPath } from '../../recipe/field-path.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';
import { required } from '../../values/required.ts';
import type { ChipSpec } from '../cups/chip-spec.ts';
import type { CupSpec } from '../cups/cup-specs.ts';
import type { FilledCup } from '../cups/fill-cup.ts';
import { placeInCup } from '../cups/place-in-cup.ts';
import type { ShelfCut } from '../model/shelf.ts';
import type { Report } from '../report.ts';
import type { MaterialCore } from './compile-material.ts';

/**
 * Reports a load above the most that a material's file allows, or else above what a cup takes of its kind, in what the book states doses
 * for; more of a sort together than cups usually hold; and a cup that holds more of other things than of plastic.
 *
 * @param plasticDensity of the cup's plastic, g/ml
 */
export function checkLoads(
  { spec, contents }: Pick<FilledCup<CupSpec | ChipSpec>, 'spec' | 'contents'>,
  plasticDensity: number,
  shelf: ReadonlyMap<string, MaterialCore>,
  volume: VolumeUnit,
  report: Report,
): void {
  const cup = usualVolume(volume);
  const load = (gramsPerMl: number): string => `${formatDecimal(gramsPerMl * cup.ml)} g`;
  const percent = (gramsPerMl: number): string => `${formatDecimal((100 * gramsPerMl) / plasticDensity, 0)} %`;
  // Asked only where something is told: it looks at the whole shelf.
  const placeOf = (id: string): FieldPath | undefined => placeInCup(spec, id, cutsWith(id, shelf));
  const loads = Object.entries(contents).sort(([, one], [, other]) => other - one);
  const all = loads.reduce((sum, [, gramsPerMl]) => sum + gramsPerMl, 0);
  const tooMuch = all > plasticDensity * 1.001 && loads.find(([id]) => spec.from === undefined || placeOf(id));
  if (tooMuch) {
    const [id] = tooMuch;
    const place = placeOf(id) ?? spec.path;
    // A log is what was, and never refused.
    const code = place.includes('log') ? 'recipe/overloaded' : 'recipe/more-than-plastic';
    report.add(code, spec.recipe, place, {
      found: `${percent(all)} of other things in the plastic, of which ${required(shelf, id).title} is ${load(tooMuch[1])} per ${cup.text}`,
      expected: 'less of them than of plastic, by mass',
      why: 'a bait is made of plastic, and what holds more of something else does not set',
      fix: 'correct the number or the unit',
    });
    return;
  }
  const told = new Set<Sort | undefined>();
  for (const [id, gramsPerMl] of loads) {
    const material = required(shelf, id);
    const { most, title, kind, use } = material;
    const sort = sortOf(material);
    // Without a most of its own it is counted with its sort alone, below.
    if (most === undefined && sort !== undefined) continue;
    const usual = usualMost(material, plasticDensity);
    if (gramsPerMl <= (most ?? usual) * 1.001) continue;
    told.add(sort);
    const place = placeOf(id) ?? spec.path;
    report.add(
      'recipe/overloaded',
      spec.recipe,
      place,
      most === undefined
        ? {
            found: `${percent(gramsPerMl)} of ${title} (${load(gramsPerMl)} per ${cup.text})`,
            expected: `at most ${percent(usual)} of ${use ?? MATERIAL_KINDS[kind].one}, by mass of the plastic`,
            why: 'more weakens the bait, or does not stay in it (common practice, no source)',
            fix: 'correct the number or the unit, or write `most` in its file if its supplier allows as much',
          }
        : {
            found: `${load(gramsPerMl)} of ${title} per ${cup.text}`,
            expected: `at most ${load(most)}, as its file says`,
            why: 'more weakens the bait, or does not stay in it',
            fix: 'use less, or correct `most` in its file',
          },
    );
  }
  for (const [sort, full] of fullness(contents, (id) => required(shelf, id), 'warned', plasticDensity)) {
    // What one material alone is too much of is told of that.
    if (full <= 1.001 || told.has(sort)) continue;
    const { all: name, by, usual: ordinary, warned, why } = TOGETHER[sort];
    const ofSort = loads.filter(([id]) => sortOf(required(shelf, id)) === sort);
    const part = ofSort.reduce(
      (sum, [id, gramsPerMl]) => sum + gramsPerMl / (by === 'volume' ? required(shelf, id).density : plasticDensity),
      0,
    );
    const most = ofSort.find(([id]) => spec.from === undefined || placeOf(id)) ?? ofSort[0]!;
    report.add('recipe/too-much-together', spec.recipe, placeOf(most[0]) ?? spec.path, {
      found: `${tenths(part)} of ${name} together, of which ${required(shelf, most[0]).title} is ${load(most[1])} per ${cup.text}`,
      expected: `at most ${tenths(warned)} by ${by === 'volume' ? 'volume' : 'mass'} of the plastic; usual are ${tenths(ordinary[0])} to ${tenths(ordinary[1])}`,
      why: `${why} (common practice, no source)`,
      fix: 'use less or stronger ones, or write `most` in their files if the suppliers allow as much',
    });
  }
}

function tenths(part: number): string {
  return `${formatDecimal(100 * part, 2)} %`;
}

/** The cuts that bring a material into a cup. */
function cutsWith(id: string, shelf: ReadonlyMap<string, MaterialCore>): readonly ShelfCut[] {
  return [...shelf.values()].flatMap(({ cuts = [] }) => cuts.filter((cut) => cut.of === id || cut.with === id));
}
