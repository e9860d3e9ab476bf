import type { ToldSlip } from '../../matching/rounds/wrong-log.ts';

/** What is less likely than this is not asked. Convention of this book. */
const WORTH_ASKING = 1e-3;

/**
 * What the maker is asked of a look that does not fit the log: one question for each slip, the likeliest first.
 *
 * @example slipQuestions([{ kind: 'left-out', title: 'Rust', dose: '4 drops', likely: 0.9 }]) // 'Did the 4 drops of Rust go in?'
 */
export function slipQuestions(slips: readonly ToldSlip[]): string {
  const asks = slips.filter(({ likely }, index) => index === 0 || likely >= WORTH_ASKING);
  return asks.map((slip, index) => sentence(index === 0 ? asked(slip) : `or ${asked(slip)}`)).join(' ');
}

function asked(slip: ToldSlip): string {
  switch (slip.kind) {
    case 'left-out':
      return `did ${amount(slip)} go in?`;
    case 'swapped':
      return `was it ${slip.instead}, not ${slip.title}?`;
    case 'extra':
      return `did ${slip.title} get in that isn’t logged${slip.dose === undefined ? '' : `, about ${slip.dose}`}?`;
    case 'miscounted':
      return `did ${TIMES[slip.times] ?? `${slip.times} times`} ${amount(slip)} go in?`;
    case 'bad-look':
      return 'was it another cup that you looked at, or another light?';
  }
}

const TIMES: Readonly<Record<number, string>> = {
  0.1: 'only a tenth of',
  0.5: 'only half of',
  2: 'twice',
  10: 'ten times',
};

function amount({ title, dose }: { readonly title: string; readonly dose?: string }): string {
  return dose === undefined ? `the ${title}` : `the ${dose} of ${title}`;
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
