import type { LeftOut } from '../matching/shelf/usable-materials.ts';
import { formatTemperature, type TemperatureUnit } from '../units/format-quantity.ts';

const SORT_WORDS: Readonly<Record<Extract<LeftOut, { why: 'sort-at-its-most' }>['sort'], string>> = {
  colour: 'liquid colour',
  powder: 'powder',
  flake: 'flake',
  salt: 'salt',
  softener: 'softener',
};

/** "Left out: Ember. Its limit is 320 °F, and the plastic pours at 330 °F." */
export function leftOutText(leftOut: LeftOut, title: string, units: { readonly temperature: TemperatureUnit }): string {
  return `Left out: ${title}. ${whyText(leftOut, units)}`;
}

function whyText(leftOut: LeftOut, { temperature }: { readonly temperature: TemperatureUnit }): string {
  switch (leftOut.why) {
    case 'too-hot': {
      const highest = formatTemperature(leftOut.highest, temperature, 'down');
      return `Its limit is ${highest}, and the plastic pours at ${formatTemperature(leftOut.pouredAt, temperature)}.`;
    }
    case 'used-up':
      return 'There is none left.';
    case 'at-its-most':
      return 'The cup has all of it that it can take.';
    case 'sort-at-its-most':
      return `The cup has all the ${SORT_WORDS[leftOut.sort]} that it can take.`;
  }
}
