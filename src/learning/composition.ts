/**
 * What is looked at, in places instead of names: made once of a look or of a cup that is asked about, and looked at for many thetas.
 *
 * @packageDocumentation
 */
import type { SpreadFlake } from '../optics/flake.ts';
import { streakColumns } from '../optics/streaks.ts';
import type { Label, LookedLayer } from './learning-data.ts';
import { COMMON_UNKNOWNS, type ShelfUnknowns } from './shelf-unknowns.ts';

/** A material that colours, in a layer. */
export interface ComposedPart {
  /** Place in `ShelfUnknowns.materials`. */
  readonly material: number;
  /** g/ml, of a plastic its share. */
  readonly dose: number;
  /** Place of its first unknown in `Composition.columns`. */
  readonly column: number;
  /** Place of its bottle's strength there; none of a plastic, and in a label. */
  readonly bottle?: number;
}

/** A layer. */
export interface ComposedLayer {
  readonly thicknessMm: number;
  readonly parts: readonly ComposedPart[];
  readonly flakes: readonly SpreadFlake[];
  /** g of colouring material per ml, flake not among it. */
  readonly load: number;
}

/** Layers that lie behind one another, the near one first, and what share of the face they are. */
export interface ComposedStack {
  readonly layers: readonly ComposedLayer[];
  readonly share: number;
}

/** See the top of the file. */
export interface Composition {
  readonly stacks: readonly ComposedStack[];
  /** Places in theta that it depends on, rising. */
  readonly columns: Int32Array;
  /** Place of the first of `COMMON_UNKNOWNS` in `columns`. */
  readonly common: number;
}

/**
 * Composes a look, or a cup that is asked about: of the maker's own bottles.
 *
 * Shape: layers with the near one first; with streaks the shares of cups that run in them, of which each layer is as thick as the bait.
 * Units: width of a streak in mm; unset: 2.
 * Throws: RangeError, naming it, if a material is not one of the shelf, or a dose, a share or a thickness is none.
 */
export function compose(
  unknowns: ShelfUnknowns,
  layers: readonly LookedLayer[],
  streaks?: readonly number[],
  streakMm?: number,
): Composition {
  const composer = new Composer(unknowns, true);
  const composed = layers.map(({ plastics, contents, thicknessMm }) =>
    composer.layer(
      plastics.map(([id, share]) => [composer.placeOf(id), share]),
      contents.map(([id, gramsPerMl]) => [composer.placeOf(id), gramsPerMl]),
      thicknessMm,
    ),
  );
  return composer.composition(composed, streaks, streakMm);
}

/** Composes what a label shows: the product, in clear plastic of which nothing is unknown. Throws: as `compose`. */
export function composeLabel(
  unknowns: ShelfUnknowns,
  material: string,
  { dose, thicknessMm }: Pick<Label, 'dose' | 'thicknessMm'>,
): Composition {
  const composer = new Composer(unknowns, false);
  const layer = composer.layer([[unknowns.labelPlastic, 1]], [[composer.placeOf(material), dose]], thicknessMm);
  return composer.composition([layer]);
}

type Placed = readonly [place: number, dose: number];

/** Layers are composed with places in theta first, for their columns are known only when all are there. */
class Composer {
  private readonly places = new Set<number>();
  private readonly unknowns: ShelfUnknowns;
  private readonly ownBottles: boolean;

  constructor(unknowns: ShelfUnknowns, ownBottles: boolean) {
    this.unknowns = unknowns;
    this.ownBottles = ownBottles;
  }

  placeOf(id: string): number {
    const place = this.unknowns.placeOf.get(id);
    if (place === undefined) throw new RangeError(`There is no material ${id} on the shelf that is learned; add it`);
    return place;
  }

  layer(plastics: readonly Placed[], contents: readonly Placed[], thicknessMm: number): ComposedLayer {
    requireAmount(thicknessMm, 'Thickness in mm');
    const parts: ComposedPart[] = plastics.map(([place, share]) => this.part(place, share));
    const flakes: SpreadFlake[] = [];
    let load = 0;
    for (const [place, dose] of contents) {
      const { flake } = this.unknowns.materials[place]!;
      if (flake) {
        requireAmount(dose, 'Dose in g/ml');
        if (dose > 0) flakes.push({ perMm: dose * flake.perMm, reflectance: flake.reflectance });
        continue;
      }
      parts.push(this.part(place, dose));
      load += dose;
    }
    return { thicknessMm, parts, flakes, load };
  }

  composition(layers: readonly ComposedLayer[], streaks?: readonly number[], streakMm?: number): Composition {
    const { common } = this.unknowns;
    for (let i = 0; i < COMMON_UNKNOWNS.length; i++) this.places.add(common + i);
    const columns = Int32Array.from(this.places).sort();
    const columnOf = new Map(Array.from(columns, (place, column) => [place, column]));
    const settled = layers.map((layer) => ({
      ...layer,
      parts: layer.parts.map(({ bottle, column, ...part }) => ({
        ...part,
        column: columnOf.get(column) ?? 0,
        ...(bottle === undefined ? {} : { bottle: columnOf.get(bottle)! }),
      })),
    }));
    return { stacks: stacksOf(settled, streaks, streakMm), columns, common: columnOf.get(common)! };
  }

  private part(place: number, dose: number): ComposedPart {
    requireAmount(dose, 'Dose in g/ml, or share of the plastic');
    const { at, kModes, sModes, bottle } = this.unknowns.materials[place]!;
    for (let i = 0; i < kModes.length + sModes.length; i++) this.places.add(at + i);
    if (bottle === undefined || !this.ownBottles) return { material: place, dose, column: at };
    this.places.add(bottle);
    return { material: place, dose, column: at, bottle };
  }
}

function stacksOf(
  layers: readonly ComposedLayer[],
  streaks?: readonly number[],
  streakMm?: number,
): readonly ComposedStack[] {
  if (layers.length === 0) throw new RangeError('There are no layers to look at; give at least one');
  if (!streaks) return [{ layers, share: 1 }];
  if (streaks.length !== layers.length)
    throw new RangeError(`${streaks.length} shares for ${layers.length} cups; give one each`);
  for (const share of streaks) requireAmount(share, 'Share of a cup');
  const total = streaks.reduce((sum, share) => sum + share, 0);
  if (!(total > 0)) throw new RangeError('The shares of the cups add up to nothing; give one that is above 0');
  const thicknessMm = Math.max(...layers.map((layer) => layer.thicknessMm));
  return streakColumns(
    streaks.map((share) => share / total),
    thicknessMm,
    streakMm,
  ).map(({ runs, share }) => ({
    layers: runs.map(({ cup, part }) => ({ ...layers[cup]!, thicknessMm: part * layers[cup]!.thicknessMm })),
    share,
  }));
}

function requireAmount(value: number, name: string): void {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY))
    throw new RangeError(`${name} is ${value}; give a finite number, at least 0`);
}
