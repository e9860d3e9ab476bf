import type { LogFault } from '../learning/log-fault.ts';
import { logFaults } from '../learning/log-faults.ts';
import { BOOK_FILE } from '../recipe/source.ts';
import { checkLogs } from './checks/check-logs.ts';
import type { ColourMemory } from './colour-memory.ts';
import { computedOf } from './computed.ts';
import { doubtedLooks } from './learning/doubted-looks.ts';
import type { LookedThings } from './learning/looks-of-readers.ts';
import type { Book } from './model.ts';
import { NOTHING } from './remembered.ts';
import type { Report } from './report.ts';
import type { MaterialCore } from './shelf/compile-material.ts';

/**
 * A book with what of its looks counts for little, and which logs cannot be right; the latter are reported.
 *
 * @param looked all that was learned from
 */
export function withDoubts(
  book: Book,
  looked: LookedThings,
  shelf: ReadonlyMap<string, MaterialCore>,
  memory: ColourMemory,
  report: Report,
): Book {
  const { learned } = book;
  const faults = memory.faults.of(BOOK_FILE, [learned], NOTHING, report, (telling): readonly LogFault[] | undefined =>
    computedOf(BOOK_FILE, telling, () => logFaults(learned)),
  );
  const doubts = doubtedLooks(looked, learned, faults ?? [], shelf);
  checkLogs(doubts, report);
  return doubts.length === 0 ? book : { ...book, doubted: doubts.map(({ look }) => look) };
}
