import type { Settings } from '../book/model.ts';
import { fahrenheit } from '../units/convert.ts';
import { formatTemperature } from '../units/format-quantity.ts';
import type { Range } from '../units/shared-range.ts';

/** A temperature in the book's unit. */
export function temperatureText(celsius: number, settings: Pick<Settings, 'temperature'>): string {
  return formatTemperature(celsius, settings.temperature);
}

/** A temperature that nothing may be heated above, in whole degrees of the book's unit and never above it. */
export function limitText(celsius: number, settings: Pick<Settings, 'temperature'>): string {
  return formatTemperature(celsius, settings.temperature, 'down');
}

/** A range of temperatures with its unit once: "100 to 120 °C". */
export function temperatureRange({ from, to }: Range, settings: Pick<Settings, 'temperature'>): string {
  return `${temperatureText(from, settings).replace(/ °.$/, '')} to ${temperatureText(to, settings)}`;
}

/** A difference of temperatures: "5 °C", "9 °F". */
export function temperatureSpan(celsius: number, { temperature }: Pick<Settings, 'temperature'>): string {
  return `${Math.round(temperature === '°F' ? fahrenheit(celsius) - fahrenheit(0) : celsius)} ${temperature}`;
}
