/**
 * What a recipe says of its bait as a whole: shares of its cups, pattern, order.
 *
 * @packageDocumentation
 */
import type { CoreOrder } from '../../patterns/pattern.ts';
import { PATTERN_NAMES, PATTERNS, type Pattern, takesCups, usualPattern } from '../../patterns/patterns.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import type { CupSpec } from '../cups/cup-specs.ts';
import type { InheritedField } from '../read/inherited-field.ts';
import type { Report } from '../report.ts';
import { shareOut } from './share-out.ts';

/** Shares of the cups, 1 together; undefined, and reported, where those that are stated do not fit. */
export function sharesOf(
  recipe: Thing<'recipe'>,
  cups: readonly CupSpec[],
  report: Report,
): readonly number[] | undefined {
  const { shares, sum, open } = shareOut(cups);
  if (shares) return shares;
  const at = cups.findLast(({ fields }) => fields.share !== undefined);
  report.add('recipe/shares', recipe, at ? [...at.path, 'share'] : ['cups'], {
    found: `shares of ${formatDecimal(sum * 100)} % together`,
    expected: open > 0 ? 'less than 100 %, with the rest for the cup without a share' : '100 % together',
    why: 'the cups make up the whole bait',
    fix: open > 0 ? 'lower a share' : 'leave one `share` out: it takes what is left',
  });
  return undefined;
}

/** The pattern, if the cups fit it. */
export function patternOf(
  recipe: Thing<'recipe'>,
  inherited: InheritedField,
  cups: readonly CupSpec[],
  report: Report,
): Pattern | undefined {
  const pattern = inherited(recipe, 'pattern') ?? usualPattern(cups.length);
  if (takesCups(pattern, cups.length)) return pattern;
  const { most, words } = PATTERNS[pattern].cups;
  const others = PATTERN_NAMES.filter((name) => takesCups(name, cups.length));
  const kept = cups.filter(({ path }) => path[0] === 'from').map(({ name }) => `\`${name}\``);
  const parent = recipe.fields.from;
  const patterns = others.map((name) => `\`${name}\``).join(' or ');
  report.add('recipe/pattern', recipe, ['pattern'], {
    found: `pattern \`${pattern}\` with ${cups.length} cup${cups.length === 1 ? '' : 's'}${kept.length > 0 ? `, of which ${kept.join(', ')} come${kept.length === 1 ? 's' : ''} from \`${parent}\`` : ''}`,
    expected: words,
    why:
      kept.length > 0
        ? 'a derived recipe has all cups of the one that it comes from, and those of its own'
        : 'the pattern says how the cups lie in the bait',
    fix:
      kept.length > 0 && cups.length > most
        ? `write \`pattern: ${others[0] ?? 'swirl'}\`; or, for some of the cups alone, remove the recipe's \`from\` and write \`from: ${parent}/CUP\` in each cup`
        : `add or remove a cup, or write ${patterns}`,
  });
  return undefined;
}

/** The order in which the cups of a bait with a core are shot, if the recipe or one above it says. A bait that needs one and has none is told of. */
export function orderOf(
  recipe: Thing<'recipe'>,
  inherited: InheritedField,
  pattern: Pattern,
  report: Report,
): CoreOrder | undefined {
  const { orders } = PATTERNS[pattern];
  const order = inherited(recipe, 'order');
  if (orders.length === 0) {
    if (recipe.fields.order !== undefined)
      report.add('recipe/order', recipe, ['order'], {
        found: `\`order\` with the pattern \`${pattern}\``,
        expected: 'no `order`',
        why: 'only a bait with a core is made in one order or the other',
        fix: 'remove the line',
      });
    return undefined;
  }
  if (order !== undefined) return order;
  report.add('recipe/order', recipe, recipe.fields.pattern === undefined ? [] : ['pattern'], {
    found: `pattern \`${pattern}\` without \`order\``,
    expected: orders.map((each) => `\`order: ${each}\``).join(' or '),
    why: 'a core that has set gets its shell shot round it, and a liquid one is shot into the shell: the page tells both until you say',
    fix: `add a line ${orders.map((each) => `\`order: ${each}\``).join(', or ')}`,
  });
  return undefined;
}
