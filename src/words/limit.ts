import { formatTemperature, type TemperatureUnit } from '../units/format-quantity.ts';

/** The highest temperature of a cup and whose it is: "max 177 °C (Ember)". */
export function maxText(celsius: number, title: string, units: { readonly temperature: TemperatureUnit }): string {
  return `max ${formatTemperature(celsius, units.temperature, 'down')} (${title})`;
}
