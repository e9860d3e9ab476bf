import type { Settings } from '../book/model.ts';
import type { Heat } from '../book/recipes/heat-of.ts';
import type { Range } from '../units/shared-range.ts';
import { bearsLeastText } from './heats.ts';
import { listText } from './sentence-text.ts';
import { limitText, temperatureText } from './temperature-text.ts';

/** The highest temperature in parts, to be set apart: `Never above`, `182 °C`, and what sets it. */
export interface LimitWords {
  readonly never: string;
  readonly degrees: string;
  readonly because: string;
}

/** The highest temperature of some cups; undefined where the suppliers state none. */
export function limitWords(
  { limit }: Pick<Heat, 'limit'>,
  settings: Pick<Settings, 'temperature'>,
  title: (material: string) => string,
): LimitWords | undefined {
  return (
    limit && {
      never: 'Never above',
      degrees: limitText(limit.celsius, settings),
      because: limit.ofRange
        ? `top of the pouring range of ${title(limit.material)}`
        : `${title(limit.material)} sets the limit`,
    }
  );
}

/** The heat in words: what the suppliers stated, and nothing else. */
export function heatWords(
  heat: Heat,
  settings: Pick<Settings, 'temperature'>,
  title: (material: string) => string,
): readonly string[] {
  const highest = limitWords(heat, settings, title);
  const others = heatBesidesLimit(heat, settings, title);
  return highest === undefined ? others : [`${highest.never} ${highest.degrees} (${highest.because}).`, ...others];
}

/** The same without the highest temperature, for whoever sets that apart. */
export function heatBesidesLimit(
  heat: Heat,
  settings: Pick<Settings, 'temperature'>,
  title: (material: string) => string,
): readonly string[] {
  const { limit, unknown, bearsLeast } = heat;
  const pouring = pouringWords(heat, settings, title);
  const nothing = limit === undefined && heat.apart.length > 0 && heat.apart.every(({ working }) => !working);
  const bears =
    bearsLeast === undefined ? [] : [`${bearsLeastText(bearsLeast.materials.map(title), bearsLeast.heats)}.`];
  if (nothing) return ['No supplier temperatures on file: read the data sheets.', ...bears];
  return [
    ...pouring,
    ...bears,
    ...(unknown.length === 0 ? [] : [`No maximum on file for ${listText(unknown.map(title))}: ask the supplier.`]),
  ];
}

/** Of a cup whose limit is below the heat at which its plastic is poured, °C. */
export function needsHeatText(pouredFrom: number, settings: Pick<Settings, 'temperature'>): string {
  return `The plastic needs at least ${temperatureText(pouredFrom, settings)} to pour: ask the suppliers.`;
}

/** At what heat to pour: in the range that all plastics share, else each plastic's own, and which has none. */
function pouringWords(
  { limit, working, apart }: Heat,
  settings: Pick<Settings, 'temperature'>,
  title: (material: string) => string,
): readonly string[] {
  // The range of a plastic may reach beyond what the flake in it can take.
  const rangeText = ({ from, to }: Range): string | undefined => {
    const upTo = Math.min(to, limit?.celsius ?? to);
    if (upTo < from) return undefined;
    return `${temperatureText(from, settings).replace(/ °.$/, '')} to ${limitText(upTo, settings)}`;
  };
  const shared = working && rangeText(working);
  if (shared !== undefined) return [`Pour at ${shared}.`];
  if (working !== undefined) return [needsHeatText(working.from, settings)];
  const ranges = apart.flatMap(({ plastic, working: own }) => {
    const text = own && rangeText(own);
    return text === undefined ? [] : [`${title(plastic)} pours at ${text}`];
  });
  const without = apart.filter(({ working: own }) => own === undefined).map(({ plastic }) => title(plastic));
  return [
    ...(ranges.length === 0 ? [] : [`${listText(ranges)}.`]),
    ...(without.length === 0 ? [] : [`No pouring range on file for ${listText(without)}: read the data sheet.`]),
    ...(without.length > 0 || ranges.length < 2 ? [] : ['These ranges don’t overlap: ask the suppliers.']),
  ];
}
