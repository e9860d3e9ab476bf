import { nearestName } from '../../diagnostics/nearest-name.ts';
import type { MaterialKind } from '../../kinds/kinds.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import type { Finding } from '../report.ts';
import type { FilmsTable } from './films-table.ts';

/** Materials of a table that are not among the known, each with its lines and its films. */
export function strangersIn(
  table: FilmsTable,
  isKnown: (name: string) => boolean,
): ReadonlyMap<string, { readonly lines: readonly number[]; readonly samples: readonly string[] }> {
  const strangers = new Map<string, { lines: number[]; samples: string[] }>();
  for (const { parts, line, sample } of table.rows) {
    for (const { material } of parts ?? []) {
      if (isKnown(material)) continue;
      const found = strangers.get(material) ?? { lines: [], samples: [] };
      found.lines.push(line);
      found.samples.push(sample);
      strangers.set(material, found);
    }
  }
  return strangers;
}

/** What is told of a material that the films name and that no file says was measured, once for all its rows. */
export function strangerFinding(
  name: string,
  lines: readonly number[],
  materials: ReadonlyMap<string, Thing<MaterialKind>>,
  known: ReadonlySet<string>,
): Finding {
  const thing = materials.get(name);
  const nearest = nearestName(name, thing ? [] : known);
  const all = lines.length === 1 ? '' : ` in ${lines.length === 2 ? 'both' : `all ${lines.length}`} lines that have it`;
  return {
    found: `material \`${name}\` in line${lines.length === 1 ? '' : 's'} ${listOfLines(lines)}`,
    expected: thing
      ? 'a material whose file says `look: { kind: measured }`'
      : `the name of a measured material on the shelf${known.size > 0 && known.size <= 12 ? ` (${[...known].join(', ')})` : ''}`,
    why: 'films tell K and S of every material that is in them, all at once',
    fix: thing
      ? `write \`look: { kind: measured }\` in ${thing.source.path}`
      : nearest === undefined
        ? `create shelf/colorants/${name}.md, or a file of its own kind, with \`look: { kind: measured }\``
        : `write \`${nearest}\`${all}`,
  };
}

/** "3 to 6" or "3, 5 and 9". */
function listOfLines(lines: readonly number[]): string {
  const [first, last] = [lines[0]!, lines.at(-1)!];
  if (lines.length > 2 && last - first === lines.length - 1) return `${first} to ${last}`;
  const shown = lines.length > 8 ? [...lines.slice(0, 7).map(String), 'others'] : lines.map(String);
  return shown.length === 1 ? shown[0]! : `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}
