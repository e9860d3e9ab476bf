/**
 * What a look-only recipe gives away to somebody who has the shelf. Run by `npm run bench look-secrets`; takes minutes.
 *
 * A look is open if one material is in every set of at most five materials that has all its published digits, with its dose within 20 %.
 */

import type { Book } from '../../src/book/model.ts';
import { LOOK_STEP } from '../../src/book/publish/look-only.ts';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import { attack, knowledgeOf, type Verdict } from '../book/look-attack/attack.ts';
import { asLookOnly, readFromEdition } from '../book/look-attack/demo-looks.ts';
import { UNTAUGHT_DEMO_BOOK } from '../book/look-attack/untaught-demo.ts';

const STEPS = [2, 3, 4, 5, 6, 8];

/** Prints the looks of the demo book, and how steps compare. */
export async function main(): Promise<void> {
  const [book, shared] = [UNTAUGHT_DEMO_BOOK, publishedBook(UNTAUGHT_DEMO_BOOK)];
  console.log(`look-secrets: what look-only recipes give away, colours in steps of ${LOOK_STEP}`);
  for (const { id } of shared.looks) {
    const { look } = await readFromEdition(shared, id, LOOK_STEP);
    console.log(`  ${id}: ${told(attack(look, knowledgeOf(book, id)))}`);
  }
  const tried = book.recipes.filter(({ pattern }) => pattern === 'solid' || pattern === 'laminate').map(({ id }) => id);
  console.log(`  the ${tried.length} solid and laminated recipes as if only their look were known:`);
  for (const step of STEPS) {
    const open = tried.filter((id) => {
      const { look, knowledge } = asLookOnly(book, id, step);
      return attack(look, knowledge, { untilClosed: true }).open;
    });
    console.log(
      `  step ${step}: ${open.length} open${open.length === 0 ? '' : ` (${open.join(', ')})`}, ${sameTiles(book, step)} pairs of tiles alike`,
    );
  }
}

function told({ sets, main: known, open }: Verdict): string {
  const count = `${sets.length} sets of at most five materials have every digit`;
  if (known === undefined) return `closed: ${count}, and none is in all of them`;
  const { material, low, high, off } = known;
  const range = `${(100 * low).toPrecision(3)} to ${(100 * high).toPrecision(3)} g per 100 ml (± ${Math.round(100 * off)} %)`;
  return `${open ? 'OPEN' : 'closed'}: ${count}, all with ${material}, ${range}`;
}

/** Pairs of recipes of which all colours are drawn alike. */
function sameTiles(book: Book, step: number): number {
  const tiles = book.recipes.map(({ id }) => {
    const { body, thin, other } = asLookOnly(book, id, step).look;
    return JSON.stringify([body, thin, other].map((look) => look && [look.overWhite.hex, look.overBlack.hex]));
  });
  return tiles.reduce((pairs, tile, at) => pairs + tiles.slice(at + 1).filter((other) => other === tile).length, 0);
}

await main();
