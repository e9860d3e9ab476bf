import { MEASUREMENTS_FILE } from '../../recipe/source.ts';
import type { TemperatureUnit } from '../../units/format-quantity.ts';
import { required } from '../../values/required.ts';
import { computed, computedEach, computedOf } from '../computed.ts';
import type { Things } from '../read/read-things.ts';
import type { Report } from '../report.ts';
import { compileMaterial, type MaterialAmounts, type MaterialCore, materialAmounts } from './compile-material.ts';
import { fitShelf, type ShelfFit, UNREADABLE } from './shelf-fit.ts';

/** The materials of a book, and what its films told of them. */
export interface CompiledShelf {
  readonly materials: ReadonlyMap<string, MaterialCore>;
  readonly films: ShelfFit;
}

/**
 * Compiles the shelf: what each file says by itself, then all films at once, without those of materials whose files cannot be used, then
 * what each material looks like.
 */
export function compileShelf(things: Things, unit: TemperatureUnit, report: Report): CompiledShelf {
  const amounts = computedEach(
    things.materials,
    report,
    (thing): MaterialAmounts => materialAmounts(thing, unit, report),
  );
  const isSound = (id: string): boolean => {
    const { path } = things.materials.get(id)?.source ?? {};
    return path !== undefined && amounts.has(id) && !report.faulty.has(path) && !things.twins.has(path);
  };
  const films =
    computedOf(MEASUREMENTS_FILE, report, () => fitShelf(things.measurements, things, isSound, report)) ?? UNREADABLE;
  const materials = [...amounts].flatMap(([id, own]): [string, MaterialCore][] => {
    const thing = required(things.materials, id);
    const material = computed(thing, report, () => compileMaterial(thing, own, films.lookOf(id), report));
    return material === undefined ? [] : [[id, material]];
  });
  return { materials: new Map(materials), films };
}
