import { METHODS } from '../../patterns/methods.ts';
import { PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import type { Mold } from '../model/shelf.ts';
import type { Report } from '../report.ts';

/** How far the sides of an injected bait may be from what the injectors give. Common practice, no source: two of one bore give half and half, within 5 %. */
const AS_INJECTED = 0.05;

/** Reports sides that two injectors, pushed together, do not give: they push out equal parts, whatever the cups hold. */
export function checkSides(
  recipe: Thing<'recipe'>,
  pattern: Pattern,
  shares: readonly number[],
  { id, method, manifold }: Pick<Mold, 'id' | 'method' | 'manifold'>,
  report: Report,
): void {
  if (!PATTERNS[pattern].sideBySide || method === undefined || !METHODS[method].injects) return;
  const [first = 0] = shares;
  const given = manifold ?? 0.5;
  if (Math.abs(first - given) <= AS_INJECTED + 1e-9) return;
  const percent = (part: number): string => `${formatDecimal(part * 100)} %`;
  report.add('recipe/uneven-shares', recipe, ['cups'], {
    found: `first side of ${percent(first)} in the mold \`${id}\`, which is injected`,
    expected: `${percent(given - AS_INJECTED)} to ${percent(given + AS_INJECTED)}`,
    ...(manifold === undefined
      ? {
          why: 'two injectors of the same bore push out equal parts, however much is in their cups',
          fix: `write \`share: ${percent(given)}\` for the first cup; where a manifold gives it another part, write that into the mold, such as \`manifold: ${percent(first)}\``,
        }
      : {
          why: 'its manifold gives the first cup as much, whatever is in it',
          fix: `write \`share: ${percent(given)}\` for the first cup, or correct \`manifold\` in molds/${id}.md`,
        }),
  });
}
