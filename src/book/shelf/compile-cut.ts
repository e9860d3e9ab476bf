import { dilution } from '../../cup/cut.ts';
import { DROP_ML } from '../../tables/material-defaults.ts';
import { defined } from '../../values/defined.ts';
import type { CupMaterial } from '../cups/cup-shelf.ts';
import type { ShelfCut } from '../model/shelf.ts';
import type { CutThing } from '../read/is-cut.ts';
import type { Things } from '../read/read-things.ts';
import type { Report } from '../report.ts';
import type { MaterialCore } from './compile-material.ts';
import { bottleFault, diluentFault } from './cut-faults.ts';

/** A cut as a cup is filled with it. */
export type CutMaterial = CupMaterial & { readonly cut: ShelfCut };

/** A dilution from its file and those of its two parts; undefined, and reported, where it cannot be. */
export function compileCut(
  thing: CutThing,
  shelf: ReadonlyMap<string, MaterialCore>,
  things: Things,
  report: Report,
): CutMaterial | undefined {
  const { title, cut, drop } = thing.fields;
  const faults = [bottleFault(thing, shelf, things), diluentFault(cut.with, shelf, things)];
  for (const [index, fault] of faults.entries())
    if (fault) report.add('material/cut', thing, ['cut', index === 0 ? 'of' : 'with'], fault);
  const [bottle, diluent] = [shelf.get(cut.of), shelf.get(cut.with)];
  if (!bottle || !diluent || faults.some(Boolean)) return undefined;
  const { gramsPerMl, bottlePerGram, diluentMlPerGram } = dilution(bottle.density, diluent.density, cut['one-in']);
  const gramsPerDrop = typeof drop === 'object' ? drop.mass / drop.count : (drop ?? DROP_ML) * gramsPerMl;
  return {
    id: thing.id,
    kind: 'colorant',
    density: gramsPerMl,
    gramsPerMl,
    gramsPerDrop,
    cut: {
      id: thing.id,
      title,
      notes: thing.notes,
      of: cut.of,
      with: cut.with,
      oneIn: cut['one-in'],
      gramsPerMl,
      gramsPerDrop,
      bottlePerGram,
      ...defined({ plasticPerGram: diluent.kind === 'plastic' ? diluentMlPerGram : undefined }),
      assumptions: drop === undefined ? [{ kind: 'drop', ml: DROP_ML }] : [],
      source: thing.source,
    },
  };
}
