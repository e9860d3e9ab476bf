import type { WrongLog } from '../../matching/rounds/wrong-log.ts';
import type { PlacedDoubt } from '../learning/doubted-looks.ts';
import type { Report } from '../report.ts';
import { slipQuestions } from './slip-questions.ts';

/** Reports looks that do not fit the log, each where it most likely went wrong. */
export function checkLogs(doubts: readonly PlacedDoubt[], report: Report): void {
  for (const { look, thing, path, part } of doubts)
    if (look.wrong) report.add('log/does-not-fit', thing, path, finding(look.wrong, look.at), part);
}

function finding({ deltaE, slips }: WrongLog, at: PlacedDoubt['look']['at']): Parameters<Report['add']>[3] {
  return {
    found: `look ${'round' in at ? `of round ${at.round}` : 'at the finished bait'} that is ΔE ${deltaE.toFixed(1)} from what the log makes`,
    expected: 'a look that fits its log',
    why: 'by all else that this book has seen, not one right look in a million is so far off; until it is settled it counts for little',
    fix: `${slipQuestions(slips)} Correct the line; if the log and the look are both right, write \`checked: true\` in the look`,
  };
}
