/**
 * What can be wrong with the heat of a cup: what it was heated to, and whether all that is in it can be poured together.
 *
 * @packageDocumentation
 */
import { BURNT, HEAT_ROUNDING, type HeatLimit, POURING } from '../../cup/heat-limit.ts';
import { tooHot } from '../../cup/heat-warnings.ts';
import { stageOf } from '../../kinds/goes-in.ts';
import { PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import { formatTemperature, type TemperatureUnit } from '../../units/format-quantity.ts';
import type { Range } from '../../units/shared-range.ts';
import { required } from '../../values/required.ts';
import type { Report } from '../report.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';
import { writtenHeat } from '../shelf/written-heat.ts';
import type { ChipSpec } from './chip-spec.ts';
import type { CupSpec } from './cup-specs.ts';
import type { FilledCup } from './fill-cup.ts';
import { placeInCup } from './place-in-cup.ts';

type Shelf = ReadonlyMap<string, MaterialCore>;

/**
 * Reports each heat of a log that a cup does not stand. A log is what was, so that only what must be a slip is refused.
 *
 * @param limitAt how hot the cup of a step may get
 */
export function checkHeat(
  { spec }: Pick<FilledCup<CupSpec | ChipSpec>, 'spec'>,
  limitAt: (step: number) => HeatLimit | undefined,
  shelf: Shelf,
  unit: TemperatureUnit,
  report: Report,
): void {
  const told = (celsius: number): string => formatTemperature(celsius, unit, 'down');
  for (const [index, { heat }] of (spec.fields.log ?? []).entries()) {
    if (heat === undefined) continue;
    const judged = tooHot(heat, limitAt(index));
    const path = [...spec.path, 'log', index, 'heat'];
    const { text, other } = writtenHeat(spec.recipe, path, heat, unit);
    const otherFits = other.celsius >= POURING.least && other.celsius <= BURNT;
    if (heat > BURNT && otherFits) {
      report.add('recipe/heat-scale', spec.recipe, path, {
        found: text,
        expected: `at most ${told(BURNT)}, which is more than a cup is heated to`,
        why: 'the number fits in the other scale, and whoever pours by this one breathes hydrogen chloride',
        fix: `write \`${other.text}\``,
      });
    } else if (judged?.kind === 'burnt') {
      report.add('recipe/burnt', spec.recipe, path, {
        found: text,
        expected: `at most ${told(BURNT)}`,
        why: 'vinyl breaks down there and gives off hydrogen chloride: that cup is spent, and its colour is no guide to the next one',
        fix: 'correct the temperature if it is a slip; if it was that hot, keep it as it is. When it happens: leave the cup where it is, switch the heat off, get out and air the room (`care/#smoke`, on the page Care)',
      });
    } else if (judged?.kind === 'too-hot') {
      const { limit } = judged;
      const { title } = required(shelf, limit.material);
      report.add('recipe/too-hot', spec.recipe, path, {
        found: text,
        expected: `at most ${told(limit.celsius)}, ${limit.ofRange ? `the top of the pouring range of ${title}, which has no \`highest\`` : `the highest for ${title}`}`,
        why: 'overheated plastic gives off hydrogen chloride, and flake scorches',
        fix: 'correct the temperature, or note what happened and keep the cup cooler next time',
      });
    } else if (heat < POURING.least && otherFits) {
      report.add('recipe/too-cold', spec.recipe, path, {
        found: text,
        expected: `at least ${formatTemperature(POURING.least, unit)}`,
        why: 'plastisol is jelly below it, and the number fits in the other scale',
        fix: `write \`${other.text}\``,
      });
    }
  }
}

/** Reports plastics of one cup that pour at no common temperature, and what scorches before its plastic pours. */
export function checkPouring(
  { spec }: Pick<FilledCup, 'spec'>,
  plastics: readonly string[],
  limit: HeatLimit | undefined,
  shelf: Shelf,
  unit: TemperatureUnit,
  report: Report,
): void {
  const { hottest, coolest } = endsOf(plastics, shelf);
  if (hottest === undefined || coolest === undefined) return;
  if (hottest.from > coolest.to) {
    report.add('recipe/no-range', spec.recipe, [...spec.path, 'plastic'], {
      found: apartWords(coolest, hottest, unit),
      expected: 'plastics with a common pouring range',
      why: 'at any heat one of them is too cold to pour, or too hot',
      fix: 'use one of them, or ask their suppliers whether they go together',
    });
    return;
  }
  if (limit === undefined || required(shelf, limit.material).kind === 'plastic') return;
  if (limit.celsius + HEAT_ROUNDING >= hottest.from) return;
  const material = required(shelf, limit.material);
  const { title } = material;
  const offHeat = stageOf(material, hottest.from) === 'off-heat';
  report.add('recipe/no-range', spec.recipe, placeInCup(spec, limit.material, material.cuts) ?? spec.path, {
    found: `${title}, which takes ${formatTemperature(limit.celsius, unit, 'down')}, with ${hottest.title}, poured from ${formatTemperature(hottest.from, unit)}`,
    expected: 'what takes the heat at which its plastic is poured',
    why: offHeat
      ? 'even stirred in last, off the heat, it meets plastic that still pours'
      : 'it scorches before the plastic runs',
    fix: `leave ${title} out, or correct \`highest\` in its file`,
  });
}

/** Reports cups of plastics that pour at no common temperature where they are shot together. */
export function checkShotTogether(
  cups: readonly Pick<FilledCup, 'spec' | 'state'>[],
  pattern: Pattern,
  shelf: Shelf,
  unit: TemperatureUnit,
  report: Report,
): void {
  const { together, one } = PATTERNS[pattern];
  if (!together) return;
  const before: string[] = [];
  for (const { spec, state } of cups) {
    const own = Object.keys(state.plastics);
    const { hottest, coolest } = endsOf([...before, ...own], shelf);
    before.push(...own);
    // Of one cup it is told there.
    if (hottest === undefined || coolest === undefined || hottest.from <= coolest.to) continue;
    if (cups.some((cup) => [hottest, coolest].every(({ id }) => Object.hasOwn(cup.state.plastics, id)))) continue;
    report.add('recipe/no-range', spec.recipe, spec.path, {
      found: apartWords(coolest, hottest, unit),
      expected: `plastics with a common pouring range in the cups of ${one}`,
      why: 'they are shot together, and at any heat one of them is too cold or too hot',
      fix: 'use the plastic of the other cup',
    });
    return;
  }
}

interface PouredPlastic extends Range {
  readonly id: string;
  readonly title: string;
}

/** Of plastics the one that is poured hottest, and the one that bears least. */
function endsOf(
  plastics: readonly string[],
  shelf: Shelf,
): { readonly hottest: PouredPlastic | undefined; readonly coolest: PouredPlastic | undefined } {
  const poured = plastics.flatMap((id): readonly PouredPlastic[] => {
    const { title, working } = required(shelf, id);
    return working === undefined ? [] : [{ id, title, ...working }];
  });
  const [hottest] = [...poured].sort((one, other) => other.from - one.from);
  const [coolest] = [...poured].sort((one, other) => one.to - other.to);
  return { hottest, coolest };
}

function apartWords(coolest: PouredPlastic, hottest: PouredPlastic, unit: TemperatureUnit): string {
  return `${coolest.title}, poured at ${formatTemperature(coolest.to, unit)} at most, with ${hottest.title}, poured from ${formatTemperature(hottest.from, unit)}`;
}
