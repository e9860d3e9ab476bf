import { type DoubtfulWay, doubtfulConstants } from '../../optics/constants-doubt.ts';
import { type CupMix, type CupMixer, cupMixer, type OpticalMaterial, type TwoViews } from '../../optics/cup-body.ts';
import { hexFromLab } from '../../optics/display.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import type { Body } from '../../optics/stack.ts';
import { spreadAxes, viewsSpread } from '../../optics/views-spread.ts';
import type { Pattern } from '../../patterns/patterns.ts';
import { FLAKE_DOUBT } from '../../tables/constants-doubt.ts';
import { baitViews } from '../cups/appearances.ts';
import type { Spread } from '../model/recipe.ts';
import type { Material } from '../model/shelf.ts';

/** A cup of a bait as its spread needs it. */
export interface DoubtedCup extends CupMix {
  readonly share: number;
  /** Standard deviation of a dose as it is measured out, as a part of it. */
  readonly doseDeviation: (material: string) => number;
}

/** A material with the doubt about it. */
export type DoubtedMaterial = OpticalMaterial & Pick<Material, 'doubt'>;

/** Axes of the spread that are shown. */
const AXES = 2;

/**
 * How far the side of a bait that is looked at may be from its prediction: by what is known of its materials, each the same
 * in all cups, and by how its doses are measured, each by itself.
 *
 * Units: ΔE00, of the view over white or over black that varies more; thickness in mm.
 */
export function spreadOfBait(
  pattern: Pattern,
  cups: readonly DoubtedCup[],
  shelf: (material: string) => DoubtedMaterial,
  thickness: number,
  optics: OpticalModel,
): Spread {
  const mixers = cups.map((cup) => cupMixer(cup, shelf, optics));
  const bodies = mixers.map((mixer) => mixer.mixed());
  /** With other bodies of some cups; the others stay as they are. */
  const views = (other: (mixer: CupMixer, index: number) => Body | undefined): TwoViews =>
    baitViews(
      pattern,
      cups.map(({ share }, index) => ({ share, body: other(mixers[index]!, index) ?? bodies[index]! })),
      thickness,
      optics,
    );
  const predicted = views(() => undefined);
  const names = [...new Set(mixers.flatMap(({ materials }) => materials))].sort();
  const materials = names.flatMap((name) =>
    otherwise(shelf(name)).map(({ up, down }) => {
      const at = (changed: OpticalMaterial): TwoViews =>
        views((mixer) => (mixer.materials.includes(name) ? mixer.replaced(name, changed).mixed() : undefined));
      return { up: at(up), down: at(down) };
    }),
  );
  const measuring = cups.flatMap((cup, changed) => {
    const { materials: inCup, doses, mixed } = cupMixer(cup, shelf, optics);
    return cup.contents.map(({ material }) => {
      const at = (sign: number): TwoViews => {
        // A step of the scale may be wider than the dose, but no dose is less than none.
        const factor = Math.max(0, 1 + sign * cup.doseDeviation(material));
        const measured = Array.from(doses, (dose, place) => (inCup[place] === material ? dose * factor : dose));
        return views((_, index) => (index === changed ? mixed(measured) : undefined));
      };
      return { up: at(1), down: at(-1) };
    });
  });
  const all = [...materials, ...measuring];
  const { median, bound90 } = viewsSpread(predicted, all);
  const overWhite = all.map(({ up, down }) => ({ up: up.overWhite, down: down.overWhite }));
  return {
    expected: kept(median),
    bound: kept(bound90),
    fromMaterials: kept(viewsSpread(predicted, materials).bound90),
    fromMeasuring: kept(viewsSpread(predicted, measuring).bound90),
    ends: spreadAxes(predicted.overWhite, overWhite, AXES).map(([low, high]) => [
      hexFromLab(low).hex,
      hexFromLab(high).hex,
    ]),
  };
}

/** A material as it may also be. */
function otherwise({ constants, doubt, flake }: DoubtedMaterial): readonly DoubtfulWay<OpticalMaterial>[] {
  if (flake) {
    const at = (sign: number): OpticalMaterial => ({
      flake: {
        ...flake,
        reflectance: Float64Array.from(flake.reflectance, (value) => Math.min(1, value * (1 + sign * FLAKE_DOUBT))),
      },
    });
    return [{ up: at(1), down: at(-1) }];
  }
  if (!constants || !doubt) return [];
  return doubtfulConstants(constants, doubt).map(({ up, down }) => ({
    up: { constants: up },
    down: { constants: down },
  }));
}

const kept = (deltaE: number): number => Number(deltaE.toFixed(2));
