import { paintDensity } from '../../tables/paint-densities.ts';
import type { FilmsFinding } from './films-finding.ts';
import type { FilmsTable } from './films-table.ts';

/** Densities of the paints of a table, g/ml by name, and what is told of the column they stand in. */
export interface PaintDensities {
  readonly densities: ReadonlyMap<string, number>;
  /** Paints whose density is that of the pigment which they are named after. */
  readonly byName: readonly string[];
  readonly findings: readonly FilmsFinding[];
}

/**
 * The density of each paint: what the column `density` says in a row of a film of that paint alone, else that of the pigment which
 * it is named after, if it is in the table of those. A density that is not of one paint is told and left alone.
 */
export function paintDensities(table: FilmsTable): PaintDensities {
  const findings: FilmsFinding[] = [];
  const stated = new Map<string, { readonly gramsPerMl: number; readonly line: number }>();
  const names = new Set<string>();
  for (const { parts = [], density, line } of table.rows) {
    for (const { material } of parts) names.add(material);
    if (density === undefined || parts.length === 0) continue;
    const tell = (found: string, expected: string): void => {
      findings.push({ severity: 'warning', file: table.file, line, found, expected });
    };
    const [{ material }] = parts as [(typeof parts)[number]];
    const first = stated.get(material);
    if (parts.length > 1) tell('density of a mixture', 'the density of a paint, in a row of that paint alone');
    else if (first === undefined) stated.set(material, { gramsPerMl: density, line });
    else if (first.gramsPerMl !== density) tell(`other density of ${material}`, `that of line ${first.line}`);
  }
  const densities = new Map<string, number>();
  const byName: string[] = [];
  for (const name of names) {
    const own = stated.get(name)?.gramsPerMl;
    const density = own ?? paintDensity(name);
    if (density === undefined) continue;
    densities.set(name, density);
    if (own === undefined) byName.push(name);
  }
  return { densities, byName, findings };
}
