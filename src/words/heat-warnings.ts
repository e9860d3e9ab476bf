import { BURNT } from '../cup/heat-limit.ts';
import type { HeatWarning } from '../cup/heat-warnings.ts';
import { HELD } from '../cup/heats-borne.ts';
import { formatTemperature } from '../units/format-quantity.ts';
import { type HeatUnit, heldText, wornTexts } from './heats.ts';

/** What was too much of heat for a cup; sentences. */
export function heatWarningSentences(
  warnings: readonly HeatWarning[],
  { temperature }: HeatUnit,
  title: (material: string) => string,
): readonly string[] {
  const told = (celsius: number): string => formatTemperature(celsius, temperature);
  const down = (celsius: number): string => formatTemperature(celsius, temperature, 'down');
  const worn = warnings.flatMap((each) => (each.kind === 'worn' ? [{ ...each, title: title(each.material) }] : []));
  const others = warnings.flatMap((warning) => {
    if (warning.kind === 'worn') return [];
    if (warning.kind === 'held')
      return `It has been ${heldText(warning.minutes, { temperature })} in all; ${HELD.from} to ${HELD.to} min are common practice (no source).`;
    const { kind, celsius } = warning;
    const reached = `It was heated to ${told(celsius)}`;
    if (kind === 'burnt')
      return `${reached}: above ${told(BURNT)} vinyl breaks down and gives off hydrogen chloride. This cup is spent. If it smokes, leave it where it is, switch off, get out and air the room.`;
    const { material, ofRange, celsius: most } = warning.limit;
    const whose = `${ofRange ? 'the top of the pouring range of' : 'the highest for'} ${title(material)}`;
    return `${reached}, above ${down(most)}, ${whose}. Keep it cooler: overheated plastic gives off hydrogen chloride, and flake scorches.`;
  });
  return [...others, ...(worn.length === 0 ? [] : [`Heated too often: ${wornTexts(worn).join('; ')}.`])];
}
