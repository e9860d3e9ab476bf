import { distance } from 'fastest-levenshtein';

// Nobody means a name by a text of this length.
const LONGEST_NAME = 100;

/**
 * The known name that a misspelt one was most likely meant to be.
 *
 * Returns undefined when nothing is near: more than a third of the letters (at least 2) would have to change.
 * A name of which it is a whole word comes before all others. Ties go to the name that comes first in `known`.
 *
 * @example nearestName('paet', ['peat', 'straw']) // 'peat'
 * @example nearestName('oz', ['ml', 'fl oz']) // 'fl oz'
 */
export function nearestName(name: string, known: Iterable<string>): string | undefined {
  const wanted = name.toLowerCase();
  let best: string | undefined;
  let fewest = Math.max(2, Math.floor(name.length / 3)) + 1;
  if (name.length > LONGEST_NAME) return undefined;
  for (const candidate of known) {
    if (candidate.includes(' ') && candidate.toLowerCase().split(' ').includes(wanted)) return candidate;
    // As many letters as one name is longer must change.
    if (Math.abs(candidate.length - wanted.length) >= fewest) continue;
    const edits = distance(wanted, candidate.toLowerCase());
    if (edits < fewest) {
      best = candidate;
      fewest = edits;
    }
  }
  return best;
}

/**
 * The edit that puts the nearest known name in the place of a misspelt one, as a diagnostic has it; undefined when nothing is near.
 *
 * @example nearestFix('paet', ['peat', 'straw']) // { fix: 'write `peat`', nearest: 'peat' }
 */
export function nearestFix(
  name: string,
  known: Iterable<string>,
): { readonly fix: string; readonly nearest: string } | undefined {
  const nearest = nearestName(name, known);
  return nearest === undefined ? undefined : { fix: `write \`${nearest}\``, nearest };
}
