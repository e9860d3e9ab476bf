import type { LeftOut } from '../matching/shelf/usable-materials.ts';
import { formatTemperature, type TemperatureUnit } from '../units/format-quantity.ts';
import { listText } from './sentence-text.ts';

type OfEffect = Extract<LeftOut, { why: 'effect' }>;

/** Why one material is left out for its effect, and why several are. */
const EFFECT_REASONS: Readonly<Record<OfEffect['effect'], readonly [one: string, several: string]>> = {
  fluorescent: [
    'It is fluorescent, and the colour you want isn’t.',
    'They are fluorescent, and the colour you want isn’t.',
  ],
  glow: [
    'It glows in the dark, and the colour you want doesn’t.',
    'They glow in the dark, and the colour you want doesn’t.',
  ],
  shift: [
    'It shifts its colour, and the one you want doesn’t.',
    'They shift their colours, and the one you want doesn’t.',
  ],
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

/** What is left out and why, a line each; in one line what has the same effect. */
export function leftOutLines(
  leftOut: readonly LeftOut[],
  title: (material: string) => string,
  units: { readonly temperature: TemperatureUnit },
): readonly string[] {
  const like = (one: OfEffect): readonly LeftOut[] =>
    leftOut.filter((each) => each.why === 'effect' && each.effect === one.effect);
  return leftOut.flatMap((each) => {
    const alike = each.why === 'effect' ? like(each) : [each];
    if (each.why !== 'effect' || alike.length === 1) return [leftOutText(each, title(each.material), units)];
    if (alike[0] !== each) return [];
    const titles = listText(alike.map(({ material }) => title(material)));
    return [`Left out: ${titles}. ${EFFECT_REASONS[each.effect][1]}`];
  });
}

function whyText(leftOut: LeftOut, { temperature }: { readonly temperature: TemperatureUnit }): string {
  switch (leftOut.why) {
    case 'too-hot': {
      const highest = formatTemperature(leftOut.highest, temperature, 'down');
      return `Its limit is ${highest}, and the plastic pours at ${formatTemperature(leftOut.pouredAt, temperature)}.`;
    }
    case 'effect':
      return EFFECT_REASONS[leftOut.effect][0];
    case 'used-up':
      return 'There is none left.';
    case 'at-its-most':
      return 'The cup already has as much of it as it can take.';
    case 'sort-at-its-most':
      return `The cup has all the ${SORT_WORDS[leftOut.sort]} that it can take.`;
  }
}
