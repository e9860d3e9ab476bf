/**
 * What a scale shows: multiples of its step, in the unit and with the decimals that the step has.
 *
 * @packageDocumentation
 */
import { formatDecimal } from './format-quantity.ts';
import { UNITS } from './unit.ts';

const SHOWN = ['g', 'oz', 'lb'] as const;

// More decimals than any scale has.
const MOST_PLACES = 6;

/** A scale's own unit and the decimals that it shows: those of the unit in which its step is the roundest number. */
function displayOf(stepGrams: number): { readonly unit: (typeof SHOWN)[number]; readonly places: number } {
  const ways = SHOWN.map((unit) => {
    const step = stepGrams / UNITS[unit].size;
    const places = placesOf(step);
    return { unit, places, digits: Number(step.toFixed(places).replace(/\D/g, '')) };
  });
  return ways.reduce((best, way) => (String(way.digits).length < String(best.digits).length ? way : best));
}

/** Decimals that write a number exactly. */
function placesOf(number: number): number {
  for (let places = 0; places < MOST_PLACES; places++) {
    if (Math.abs(Number(number.toFixed(places)) / number - 1) < 1e-9) return places;
  }
  return MOST_PLACES;
}

/** A mass as a scale of hundredths shows it: two decimals, more of what is less than a tenth of a gram. Units: g. */
export function weighedText(grams: number): string {
  return `${grams >= 0.1 ? grams.toFixed(2) : formatDecimal(grams, 2)} g`;
}

/**
 * A mass as a scale shows it, with the grams beside it where the scale shows something else.
 *
 * @param grams a multiple of the step
 * @param stepGrams step of the scale, g
 * @example scaleText(0.25, 0.25) // '0.25 g'
 * @example scaleText(1.1339809, 0.28349523125) // '0.04 oz (1.13 g)'
 */
export function scaleText(grams: number, stepGrams: number): string {
  const { unit, places } = displayOf(stepGrams);
  const shown = `${(grams / UNITS[unit].size).toFixed(places)} ${unit}`;
  return unit === 'g' ? shown : `${shown} (${weighedText(grams)})`;
}
