/**
 * Numbers and names of the book as a reader has them, in the book's units; each kind has its own file.
 *
 * @packageDocumentation
 */
export { moneyText } from '../units/money-text.ts';
export { deltaEText, differenceText, differenceWords, hidesText } from '../words/difference.ts';
export { counted, listText, sentence } from '../words/sentence-text.ts';
export { limitText, temperatureText } from '../words/temperature-text.ts';
export { massText, volumeText } from './amount-text.ts';
export { dayText } from './day-text.ts';
export { inches } from './flake-size-text.ts';
