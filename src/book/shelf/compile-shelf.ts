import type { OpticalModel } from '../../optics/optical-model.ts';
import { MEASUREMENTS_FILE } from '../../recipe/source.ts';
import type { TemperatureUnit } from '../../units/format-quantity.ts';
import { required } from '../../values/required.ts';
import { computed, computedEach, computedOf } from '../computed.ts';
import type { Things } from '../read/read-things.ts';
import { NOTHING, type Remembered } from '../remembered.ts';
import type { Report } from '../report.ts';
import { type CutMaterial, compileCut } from './compile-cut.ts';
import { compileMaterial, type MaterialAmounts, type MaterialCore, materialAmounts } from './compile-material.ts';
import { fitShelf, type ShelfFit, UNREADABLE } from './shelf-fit.ts';

/** What the last compile has left of the shelf. */
interface ShelfMemory {
  readonly amounts: Remembered<MaterialAmounts>;
  readonly films: Remembered<ShelfFit>;
  readonly materials: Remembered<MaterialCore>;
  readonly cuts: Remembered<CutMaterial, MaterialCore>;
  readonly withCuts: Remembered<MaterialCore>;
}

/** The materials of a book, and what its films told of them. */
export interface CompiledShelf {
  readonly materials: ReadonlyMap<string, MaterialCore>;
  /** Dilutions, which are no materials: each is with its bottle, too. */
  readonly cuts: ReadonlyMap<string, CutMaterial>;
  readonly films: ShelfFit;
}

/**
 * Compiles the shelf: what each file says by itself, then all films at once, without those of materials whose files cannot be used, then
 * what each material looks like.
 */
export function compileShelf(
  things: Things,
  unit: TemperatureUnit,
  optics: OpticalModel,
  memory: ShelfMemory,
  report: Report,
): CompiledShelf {
  const inputs = [unit];
  const amounts = computedEach(things.materials, memory.amounts, { inputs, shelf: NOTHING }, report, (thing, telling) =>
    materialAmounts(thing, unit, telling),
  );
  const isSound = (id: string): boolean => {
    const { path } = things.materials.get(id)?.source ?? {};
    return path !== undefined && amounts.has(id) && !report.faulty.has(path) && !things.twins.has(path);
  };
  const films =
    memory.films.of(MEASUREMENTS_FILE, filmsInputs(things, isSound), NOTHING, report, (telling) =>
      computedOf(MEASUREMENTS_FILE, telling, () => fitShelf(things.measurements, things, isSound, telling)),
    ) ?? UNREADABLE;
  const materials = [...amounts].flatMap(([id, own]): [string, MaterialCore][] => {
    const thing = required(things.materials, id);
    const look = films.lookOf(id);
    // A fit of the same films gives the same looks, and whoever uses them is not to be computed again.
    const material = memory.materials.of(id, [thing, own, JSON.stringify(look), optics], NOTHING, report, (telling) =>
      computed(thing, telling, () => compileMaterial(thing, own, { measured: look, optics }, telling)),
    );
    return material === undefined ? [] : [[id, material]];
  });
  return { ...withCuts(new Map(materials), things, memory, report), films };
}

/** The materials, each bottle with its dilutions, and these by themselves. */
function withCuts(
  materials: ReadonlyMap<string, MaterialCore>,
  things: Things,
  memory: ShelfMemory,
  report: Report,
): Pick<CompiledShelf, 'materials' | 'cuts'> {
  const sound = new Map([...things.cuts].filter(([, { source }]) => !things.twins.has(source.path)));
  const cuts = computedEach(sound, memory.cuts, { shelf: materials }, report, (thing, telling, shelf) =>
    compileCut(thing, shelf, things, telling),
  );
  const all = [...materials].map(([id, material]): [string, MaterialCore] => {
    const own = [...cuts.values()].flatMap(({ cut }) => (cut.of === id ? [cut] : []));
    const whole = memory.withCuts.of(id, [material, ...own], NOTHING, report, () =>
      own.length === 0 ? material : { ...material, cuts: own },
    );
    return [id, whole];
  });
  return { materials: new Map(all), cuts };
}

/** All that the fit of the films hangs on. */
function filmsInputs(
  { materials, measurements, faulty }: Things,
  isSound: (id: string) => boolean,
): readonly unknown[] {
  return [
    typeof measurements === 'object' ? measurements.text : measurements,
    JSON.stringify([...faulty.materials, faulty.folderOf('colorant')]),
    JSON.stringify([...materials].map(([id, { kind, fields }]) => [id, kind, fields, isSound(id)])),
  ];
}
