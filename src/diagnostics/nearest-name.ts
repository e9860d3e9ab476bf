import { distance } from 'fastest-levenshtein';

// Nobody means a name by a text of this length.
const LONGEST_NAME = 100;

// Shorter ones begin too many others.
const SHORTEST_BEGINNING = 3;

// Less than one edit: it is the commonest slip of all.
const SWAP = 0.5;

/**
 * The known name that a misspelt one was most likely meant to be.
 *
 * A name with spaces of which it is a whole word comes before all others. Then come names of which it has two neighbouring letters
 * exchanged, or one letter otherwise; the only name with hyphens of which it is a whole word; the name that takes the fewest
 * edits, of a third of the letters (at least 2) at most; the only name that begins it, or that it begins. Ties go to the name that
 * comes first in `known`. Returns undefined when none is so near.
 *
 * @example nearestName('paet', ['peat', 'straw']) // 'peat'
 * @example nearestName('oz', ['ml', 'fl oz']) // 'fl oz'
 * @example nearestName('white', ['over-white', 'over-black']) // 'over-white'
 * @example nearestName('crawfish', ['worm', 'craw']) // 'craw'
 */
export function nearestName(name: string, known: Iterable<string>): string | undefined {
  const wanted = name.toLowerCase();
  let best: string | undefined;
  let fewest = Math.max(2, Math.floor(name.length / 3)) + SWAP;
  if (name.length > LONGEST_NAME) return undefined;
  const having = new Set<string>();
  const beginning = new Set<string>();
  for (const candidate of known) {
    const other = candidate.toLowerCase();
    if (other.includes(' ') && other.split(' ').includes(wanted)) return candidate;
    if (other.includes('-') && other.split('-').includes(wanted)) having.add(candidate);
    if (begins(other, wanted) || begins(wanted, other)) beginning.add(candidate);
    // As many letters as one name is longer must change.
    if (Math.abs(other.length - wanted.length) > fewest) continue;
    const edits = slips(wanted, other);
    if (edits < fewest) {
      best = candidate;
      fewest = edits;
    }
  }
  const only = ({ size }: ReadonlySet<string>): boolean => size === 1;
  if (best !== undefined && fewest <= 1) return best;
  return (only(having) ? [...having][0] : undefined) ?? best ?? (only(beginning) ? [...beginning][0] : undefined);
}

/** Letters in which two texts differ, whatever their case; less than one for two neighbours that are exchanged. */
export function slips(one: string, other: string): number {
  const [first, second] = [one.toLowerCase(), other.toLowerCase()];
  return isSwapped(first, second) ? SWAP : distance(first, second);
}

/** Whether a name is the beginning of another. */
function begins(name: string, other: string): boolean {
  return name.length >= SHORTEST_BEGINNING && other.startsWith(name);
}

/** Whether two texts differ by two neighbouring letters that are exchanged; of two letters that leaves nothing. */
function isSwapped(one: string, other: string): boolean {
  if (one.length !== other.length || one.length <= 2 || one === other) return false;
  let at = 0;
  while (one[at] === other[at]) at++;
  return one.slice(0, at) + (one[at + 1] ?? '') + one[at] + one.slice(at + 2) === other;
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

/**
 * Whether a name may mean another one by its numbers: `craw-3` and `craw-4` are two things of a kind, and neither is the other misspelt. A number may
 * have been left out, or a digit have slid into a word.
 *
 * @example countAlike('craw-4', 'craw-3') // false
 * @example countAlike('craw-4', 'craw') // false
 * @example countAlike('craw', 'craw-3') // true
 * @example countAlike('craw4', 'craw') // true
 */
export function countAlike(name: string, other: string): boolean {
  const [wanted, known] = [name, other].map((each) => (each.match(/\d+/g) ?? []).join());
  return wanted === known || wanted === '' || (known === '' && !/(?:^|[^\p{L}\d])\d/u.test(name));
}

/**
 * The edit for the name of a file that is not there: the nearest name that may be the same thing, else what is to be done, with
 * the nearest name that is there as a fact.
 *
 * @param otherwise what is to be done where none is near, `create molds/craw-4.md`
 *
 * @example nearestFileFix('craw-4', ['craw-3'], 'create molds/craw-4.md') // { fix: 'create molds/craw-4.md; there is `craw-3`' }
 */
export function nearestFileFix(
  name: string,
  known: readonly string[],
  otherwise: string,
): { readonly fix: string; readonly nearest?: string } {
  const near = nearestFix(
    name,
    known.filter((other) => countAlike(name, other)),
  );
  if (near) return near;
  const other = nearestName(name, known);
  return { fix: other === undefined ? otherwise : `${otherwise}; there is \`${other}\`` };
}
