import type { Look } from '../book/model/looks.ts';
import type { Settings } from '../book/model.ts';
import { lengthText } from '../units/length-text.ts';
import { sentence } from './words.ts';

const AFTER: Readonly<Record<NonNullable<Look['after']>, string>> = {
  hot: 'while hot',
  '10 min': 'after 10 min',
  'next day': 'next day',
};

/** How something was looked at, word by word: "wet", "next day", "3 mm". */
export function howWords(
  { thicknessMm, after, wet }: Pick<Look, 'thicknessMm' | 'after' | 'wet'>,
  settings: Pick<Settings, 'volume'>,
): readonly string[] {
  return [
    ...(wet ? ['wet'] : []),
    ...(after === undefined ? [] : [AFTER[after]]),
    ...(thicknessMm === undefined ? [] : [lengthText(thicknessMm, settings)]),
  ];
}

/** How somebody looked, and how sure of it they are, in a few words: "Wet, next day, 3 mm, within ΔE 5." Empty where they have not said. */
export function lookWords(
  { doubt, contrastDoubt, checked, camera, ...how }: Look,
  settings: Pick<Settings, 'volume'>,
): string {
  const words = [
    ...howWords(how, settings),
    ...(doubt === undefined || doubt.usual ? [] : [`within ΔE ${twoDigits(doubt.bound)}`]),
    ...(contrastDoubt === undefined ? [] : [`hiding within ${twoDigits(contrastDoubt * 100)} %`]),
    ...(checked ? ['looked at twice'] : []),
    ...(camera === undefined ? [] : [`photo by ${camera}`]),
  ];
  return words.length === 0 ? '' : `${sentence(words.join(', '))}.`;
}

/** As many digits as a doubt has. */
const twoDigits = (value: number): number => Number(value.toPrecision(2));
