import type { LeftOut } from '../matching/shelf/usable-materials.ts';
import { formatTemperature, type TemperatureUnit } from '../units/format-quantity.ts';

const EFFECT_REASONS: Readonly<Record<Extract<LeftOut, { why: 'effect' }>['effect'], string>> = {
  fluorescent: 'It is fluorescent, and the colour you want isn’t.',
  glow: 'It glows in the dark, and the colour you want doesn’t.',
  shift: 'It shifts its colour, and the one you want doesn’t.',
};

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
    case 'effect':
      return EFFECT_REASONS[leftOut.effect];
    case 'used-up':
      return 'There is none left.';
    case 'at-its-most':
      return 'The cup has all of it that it can take.';
    case 'sort-at-its-most':
      return `The cup has all the ${SORT_WORDS[leftOut.sort]} that it can take.`;
  }
}
