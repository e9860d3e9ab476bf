import { type Edit, writeFix } from '../units/edit.ts';
import { defined } from '../values/defined.ts';
import type { Read, ReadFault } from './field-fault.ts';

// A comma, a unit, one of it: nothing has more faults than these that lead to an edit each.
const MOST_STEPS = 5;

/**
 * A fault with the edits alone that are read: one that is not is mended in turn, or left out. Where none is left, what is wrong with the first
 * is told.
 *
 * @param read reads a value of the field
 */
export function settled<T>(fault: ReadFault, read: (input: unknown) => Read<T>): ReadFault {
  const { edits = [], fix: _, nearest: __, ...rest } = fault;
  if (edits.length === 0) return fault;
  const { accepted, otherwise } = acceptedEdits(edits, read, MOST_STEPS);
  const fix = writeFix(accepted, rest.otherwise ?? otherwise);
  if (accepted.length > 0) return { ...fault, ...defined({ fix }) };
  const next = edits
    .map(({ text }) => readWritten(text, read))
    .find((result) => 'fault' in result && !result.fault.edits);
  return next !== undefined && 'fault' in next
    ? { ...next.fault, found: fault.found }
    : { ...rest, ...defined({ fix }) };
}

/** The edits that are read, each of them once, and what else may be written by the faults of the others. */
interface Accepted {
  readonly accepted: readonly Edit[];
  readonly otherwise: string | undefined;
}

function acceptedEdits<T>(edits: readonly Edit[], read: (input: unknown) => Read<T>, steps: number): Accepted {
  const byText = new Map<string, Edit>();
  let otherwise: string | undefined;
  const accept = (edit: Edit): void => {
    if (!byText.has(edit.text)) byText.set(edit.text, edit);
  };
  for (const edit of edits) {
    const result = readWritten(edit.text, read);
    if ('value' in result) accept(edit);
    if ('value' in result || steps === 0) continue;
    const further = (result.fault.edits ?? []).filter(({ text }) => text !== edit.text);
    const mended = acceptedEdits(further, read, steps - 1);
    otherwise ??= result.fault.otherwise ?? mended.otherwise;
    for (const { text, when } of mended.accepted) {
      const both = [edit.when, when].filter((each) => each !== undefined);
      accept(both.length === 0 ? { text } : { text, when: both.join(' and ') });
    }
  }
  return { accepted: [...byText.values()], otherwise };
}

/** Reads a text as it stands in a file, where YAML makes a number of one that is written as such. */
function readWritten<T>(text: string, read: (input: unknown) => Read<T>): Read<T> {
  const asNumber = /^(?:\d+(?:\.\d*)?|\.\d+)$/.test(text) ? read(Number(text)) : undefined;
  return asNumber !== undefined && 'value' in asNumber ? asNumber : read(text);
}
