/**
 * How often and how long a cup was hot, held against what is in it.
 *
 * @packageDocumentation
 */
import { HELD, type HeatsBorne, isWorn } from '../../cup/heats-borne.ts';
import { formatTemperature, type TemperatureUnit } from '../../units/format-quantity.ts';
import { inWords, ordinal } from '../../units/ordinal.ts';
import { writtenDuration } from '../../units/written-quantity.ts';
import { required } from '../../values/required.ts';
import type { Report } from '../report.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';
import type { FilledCup } from './fill-cup.ts';

type Shelf = ReadonlyMap<string, Pick<MaterialCore, 'title' | 'bears'>>;

/** Reports the first heat that was one too many, of each material that had one. A log is what was, so that nothing is refused. */
export function checkHeats({ spec, turns }: Pick<FilledCup, 'spec' | 'turns'>, shelf: Shelf, report: Report): void {
  let told = new Set<string>();
  let before = 1;
  for (const { step, heats, borne } of turns) {
    if (heats <= before) told = new Set();
    before = heats;
    const path = [...spec.path, 'log', step];
    const place = spec.fields.log?.[step]?.reheat ? [...path, 'reheat'] : path;
    for (const { titles, count, bears } of wornBy(borne, told, shelf)) {
      const names = titles.join(', ');
      report.add('recipe/worn', spec.recipe, place, {
        found: `${ordinal(count)} heat of ${names}`,
        expected: bears.usual
          ? `at most ${bears.from} to ${bears.to} heats, as such materials bear (common practice, no source)`
          : `at most ${inWords(bears.from)}, as \`bears\` has it in ${titles.length === 1 ? 'its file' : 'their files'}`,
        why: 'each heat takes something of colour, shine and strength, and the one in which it went in counts',
        fix: `${bears.usual ? 'write `bears: … heats` if its maker says so, or begin' : 'begin'} a new cup earlier next time; a log that is right stays as it is`,
      });
    }
  }
}

interface Worn {
  readonly titles: readonly string[];
  readonly count: number;
  readonly bears: HeatsBorne;
}

/** What has borne too many heats and was not told of yet; together what bears as many. */
function wornBy(borne: Readonly<Record<string, number>>, told: Set<string>, shelf: Shelf): readonly Worn[] {
  const groups = new Map<string, Worn>();
  for (const [id, count] of Object.entries(borne)) {
    const { title, bears } = required(shelf, id);
    if (bears === undefined || told.has(id) || !isWorn(count, bears)) continue;
    told.add(id);
    const key = [count, bears.from, bears.to, bears.usual].join();
    groups.set(key, { count, bears, titles: [...(groups.get(key)?.titles ?? []), title] });
  }
  return [...groups.values()];
}

/** Reports a cup that was held hot for longer than plastic bears, where it became too long. */
export function checkHeld({ spec }: Pick<FilledCup, 'spec'>, unit: TemperatureUnit, report: Report): void {
  let sum = 0;
  for (const [index, { 'new-cup': begun, held = 0 }] of (spec.fields.log ?? []).entries()) {
    if (begun) sum = 0;
    const wasLong = sum > HELD.from;
    sum += held;
    if (wasLong || sum <= HELD.from) continue;
    report.add('recipe/held-long', spec.recipe, [...spec.path, 'log', index, 'held'], {
      found: `${writtenDuration(sum)} above ${formatTemperature(HELD.above, unit)} in all`,
      expected: `at most ${HELD.from} to ${HELD.to} min (common practice, no source)`,
      why: 'held hot, vinyl yellows and weakens even below its highest temperature',
      fix: `let the cup cool between pours, or begin a new one; a log that is right stays as it is`,
    });
  }
}
