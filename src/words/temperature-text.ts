import type { Settings } from '../book/model.ts';
import { formatTemperature } from '../units/format-quantity.ts';

/** A temperature in the book's unit. */
export function temperatureText(celsius: number, settings: Pick<Settings, 'temperature'>): string {
  return formatTemperature(celsius, settings.temperature);
}

/** A temperature that nothing may be heated above, in whole degrees of the book's unit and never above it. */
export function limitText(celsius: number, settings: Pick<Settings, 'temperature'>): string {
  return formatTemperature(celsius, settings.temperature, 'down');
}
