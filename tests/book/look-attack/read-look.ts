import type { RecipeLook } from '../../../src/book/model/recipe.ts';
import { BLACK_CARD, WHITE_CARD } from '../../../src/render/swatch/tint.ts';
import type { PublicLook } from './attack.ts';

/** The finished bytes that tell of a look-only recipe: the book's data and its page. Its pictures are made of the data alone. */
export interface LookBytes {
  readonly bookJson: string;
  readonly page: string;
  /** The drawing of its test chip, which the page shows. */
  readonly chip: string;
}

/** What an attacker reads there. */
export interface ReadLook {
  readonly look: PublicLook;
  /** Colours on the page that are none of its own and not the cards': they would tell something more. */
  readonly strayColours: readonly string[];
  /** Numbers in the words of the page. */
  readonly numbers: readonly string[];
}

/** Reads a look from the finished bytes of the shared edition, and from nothing else. */
export function readLook({ bookJson, page, chip }: LookBytes, id: string, step: number): ReadLook {
  const { looks } = JSON.parse(bookJson) as { readonly looks: readonly RecipeLook[] };
  const look = looks.find((each) => each.id === id)!;
  const parts = [look.body, look.thin, look.other].filter((part) => part !== undefined);
  const known = new Set([
    WHITE_CARD,
    BLACK_CARD,
    ...parts.flatMap(({ overWhite, overBlack }) => [overWhite.hex, overBlack.hex]),
  ]);
  const article = page.slice(page.indexOf('<article'), page.indexOf('</article>'));
  const drawn = [...`${article}${chip}`.matchAll(/#[0-9a-f]{6}\b/gi)].map(([hex]) => hex.toLowerCase());
  const stray = drawn.filter((hex) => !known.has(hex));
  const words = article
    .replace(/<svg[\s\S]*?<\/svg>/g, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&#\d+;/g, ' ');
  return {
    look: { ...look, step },
    strayColours: [...new Set(stray)],
    numbers: [...words.matchAll(/\d+(?:\.\d+)?/g)].map(([number]) => number),
  };
}
