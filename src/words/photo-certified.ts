import type { CardCertified, NotCertified } from '../photo/certify/certify-card.ts';
import { deltaEText } from './difference.ts';
import type { RefusalWords } from './photo-refusal.ts';

/** How well a card is known by now, and what that brings; sentences. The figures are those of photos of colour charts with published values. */
export function certifiedText({ bound, chartDeltaE }: Pick<CardCertified, 'bound' | 'chartDeltaE'>): string {
  return [
    `Your card is measured: its paper and each of its greys are within ΔE ${deltaEText(bound)}, nine times in ten.`,
    `The chart’s own colours came out ΔE ${deltaEText(chartDeltaE)} from what is published of them (the middle one of 18).`,
    'What it brings: on photos of charts half of the colours came within ΔE 4.4 with known greys, and within 5.3 without.',
  ].join(' ');
}

/** What is to be done with the fields below. */
export const FIELDS_OF_A_CARD = 'Put this into book.md, and every photo from then on is corrected by it:';

/** What a photo can't tell of a card. */
export const LAY_A_RULER =
  'How long its printed 80 mm are no photo can tell: lay a ruler on them, and add scale, as in scale: 79.6 mm.';

const WORDS: Readonly<Record<NotCertified['reason'], RefusalWords>> = {
  'no-chart': {
    what: 'There is no colour chart to be seen beside the card.',
    why: 'It has to be a chart of 24 patches, all of them in the picture, that has the colours published for it.',
    cure: 'Lay it flat beside the card, face up, with nothing on it. If it is there, say where its four corner patches are: --corners "x,y x,y x,y x,y", their middles, in pixels from the left and from the top.',
  },
  'chart-clipped': {
    what: 'The chart’s greys are brighter than the photo can show.',
    why: 'Once its white is burnt out, it tells nothing.',
    cure: 'Turn the exposure down a little, and take it again.',
  },
  'uneven-light': {
    what: 'Light falls too unevenly on card and chart.',
    why: 'What the chart tells of the phone holds for the card only if both are in the same light.',
    cure: 'Lay them close together, in light from afar such as a window’s, and take it again.',
  },
};

/** Why a card couldn't be measured by a chart, and what to do. */
export function notCertifiedText({ reason }: Pick<NotCertified, 'reason'>): string {
  const { what, why, cure } = WORDS[reason];
  return `${what} ${why} ${cure}`;
}
