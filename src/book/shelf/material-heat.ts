import { HEAT_ROUNDING, HIGHEST_OF_PLASTIC, POURING } from '../../cup/heat-limit.ts';
import type { DiagnosticCode } from '../../diagnostics/catalogue.ts';
import type { MaterialKind } from '../../kinds/kinds.ts';
import type { FieldPath } from '../../recipe/field-path.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { formatTemperature, type TemperatureUnit } from '../../units/format-quantity.ts';
import type { Range } from '../../units/shared-range.ts';
import type { Material } from '../model/shelf.ts';
import type { Report } from '../report.ts';
import { type WrittenHeat, writtenHeat } from './written-heat.ts';

const SCORCHES = 'plastisol is jelly below it, and scorches and gives off hydrogen chloride above';

/** What is offered for a plastic is not warned of. */
const USUAL: Range = { from: POURING.least, to: POURING.most };

type Heat = Pick<Material, 'highest' | 'working'>;

/** A material's temperatures that can be believed, °C; what cannot be is reported, and taken for unknown. */
export function materialHeat(thing: Thing<MaterialKind>, unit: TemperatureUnit, report: Report): Heat {
  const heat = believedHeat(thing, unit, report);
  if (thing.kind === 'plastic') reportUnusual(thing, heat, unit, report);
  return heat;
}

/** Reports what can be of a plastic, but is of few. */
function reportUnusual(
  thing: Thing<MaterialKind>,
  { highest, working }: Heat,
  unit: TemperatureUnit,
  report: Report,
): void {
  const fix = 'look at the supplier’s sheet again, and keep it if it says so';
  const hot = {
    why: 'it scorches and gives off hydrogen chloride not far above (common practice, no source)',
    fix,
  };
  if (highest !== undefined && highest > POURING.most + HEAT_ROUNDING) {
    report.add('plastic/hot', thing, ['highest'], {
      found: `highest of ${writtenHeat(thing, ['highest'], highest, unit).text}`,
      expected: `at most ${formatTemperature(POURING.most, unit, 'down')}, as most plastisol takes`,
      ...hot,
    });
  }
  if (working !== undefined && working.to > POURING.warm + HEAT_ROUNDING) {
    report.add('plastic/hot', thing, ['working', 'to'], {
      found: `pouring range up to ${writtenHeat(thing, ['working', 'to'], working.to, unit).text}`,
      expected: `at most ${formatTemperature(POURING.warm, unit, 'down')}, as most plastisol is poured`,
      ...hot,
    });
  }
  if (working !== undefined && working.from < POURING.cool - HEAT_ROUNDING) {
    report.add('plastic/cold', thing, ['working', 'from'], {
      found: `pouring range from ${writtenHeat(thing, ['working', 'from'], working.from, unit).text}`,
      expected: `at least ${formatTemperature(POURING.cool, unit)}, as most plastisol is poured`,
      why: 'it is not fused yet, so that baits tear (common practice, no source)',
      fix,
    });
  }
}

function believedHeat(thing: Thing<MaterialKind>, unit: TemperatureUnit, report: Report): Heat {
  const { highest } = thing.fields;
  const heatAt = (path: FieldPath, celsius: number): WrittenHeat => writtenHeat(thing, path, celsius, unit);
  const fromTo = ({ from, to }: Range): string =>
    `from ${formatTemperature(from, unit)} to ${formatTemperature(to, unit, 'down')}`;
  const mended = ({ other }: WrittenHeat, fits: Range, otherwise: string): string =>
    isWithin(other.celsius, fits) ? `write \`${other.text}\`` : otherwise;
  const tell = (
    code: DiagnosticCode,
    path: FieldPath,
    celsius: number,
    fits: Range,
    why: string,
    otherwise: string,
  ) => {
    const heat = heatAt(path, celsius);
    report.add(code, thing, path, {
      found: heat.text,
      expected: `a temperature ${fromTo(fits)}`,
      why,
      fix: mended(heat, thing.kind === 'plastic' ? USUAL : fits, otherwise),
    });
  };

  if (thing.kind !== 'plastic') {
    const fits = { from: POURING.least, to: HIGHEST_OF_PLASTIC };
    if (highest === undefined || isWithin(highest, fits)) return highest === undefined ? {} : { highest };
    const above = highest > fits.to;
    tell(
      'material/heat',
      ['highest'],
      highest,
      fits,
      above
        ? 'no cup gets as hot, so that the book says nothing of it'
        : 'nothing that takes less goes into hot plastic',
      above ? 'look at the data sheet again, or leave `highest` out' : 'look at the data sheet again',
    );
    return above ? {} : { highest };
  }

  const { working } = thing.fields;
  const again = 'look at the supplier’s sheet again';
  const pouring = { from: POURING.least, to: POURING.most };
  const upTo = { from: POURING.least, to: HIGHEST_OF_PLASTIC };
  const strange = (['from', 'to'] as const).filter((end) => working && !isWithin(working[end], pouring));
  for (const end of strange) tell('plastic/heat', ['working', end], working![end], pouring, SCORCHES, again);
  const believed = highest !== undefined && isWithin(highest, upTo) ? highest : undefined;
  if (highest !== undefined && believed === undefined)
    tell('plastic/heat', ['highest'], highest, upTo, SCORCHES, again);
  const known = believed === undefined ? {} : { highest: believed };
  if (working === undefined || strange.length > 0) return known;

  const [from, to] = [heatAt(['working', 'from'], working.from).text, heatAt(['working', 'to'], working.to).text];
  if (working.from > working.to) {
    report.add('plastic/range', thing, ['working', 'from'], {
      found: `pouring range from ${from} to ${to}`,
      expected: 'the lower temperature as `from`, the higher as `to`',
      why: 'nothing can be poured in it',
      fix: 'exchange `from` and `to`, or correct one',
    });
    return known;
  }
  if (believed !== undefined && believed + HEAT_ROUNDING < working.from) {
    report.add('plastic/range', thing, ['highest'], {
      found: `highest of ${heatAt(['highest'], believed).text} with a pouring range from ${from}`,
      expected: 'a highest temperature that is not below the pouring range',
      why: 'the plastic could never be poured',
      fix: 'correct `highest` or `working` by the supplier’s sheet',
    });
    return known;
  }
  return { ...known, working };
}

function isWithin(celsius: number, { from, to }: Range): boolean {
  return celsius >= from - HEAT_ROUNDING && celsius <= to + HEAT_ROUNDING;
}
