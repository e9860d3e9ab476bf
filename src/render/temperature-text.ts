import type { Settings } from '../book/model.ts';
import { formatTemperature } from '../units/format-quantity.ts';

/** A temperature in the book's unit. */
export function temperatureText(celsius: number, settings: Pick<Settings, 'temperature'>): string {
  return formatTemperature(celsius, settings.temperature);
}
