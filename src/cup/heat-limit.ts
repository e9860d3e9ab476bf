import type { Range } from '../units/shared-range.ts';
import { defined } from '../values/defined.ts';

/**
 * Heat that a supplier's range for pouring plastisol may lie in, °C; below `cool` and above `warm` it is unusual. Common practice, no source:
 * plastisol is jelly from 60 to 90 °C, strong from 150 to 165, clear and pourable from 160 to 177, yellows in minutes from 185 or 190,
 * and scorches near 205.
 */
export const POURING = { least: 120, cool: 140, warm: 193, most: 205 } as const;

/**
 * Lowest heat that plastisol is poured at, °C: what is compared with, where the shelf has neither a range nor a highest temperature of a plastic.
 * Common practice, no source: thin skins are poured from about 149 on.
 */
export const LEAST_POURING = 150;

/** Most that is believed of a plastic's highest temperature, °C. Common practice, no source: vinyl breaks down below it. */
export const HIGHEST_OF_PLASTIC = 230;

/** Heat above which a cup has lost some of its vinyl, °C: it gives off hydrogen chloride. Common practice, no source. */
export const BURNT = 200;

/** Temperatures nearer than this are the same, °C: a limit of 340 °F is one of 339.99999999999994 by its degrees Celsius. */
export const HEAT_ROUNDING = 0.01;

/** What the shelf says of the heat that a material stands, °C. */
export interface HeatMaterial {
  readonly highest?: number;
  /** Of a plastic: the range in which it is poured. */
  readonly working?: Range;
}

/** The highest that plastics are poured at, °C: of one without a range its highest temperature, of one without either what any is poured at. */
export function pouredAt(plastics: readonly HeatMaterial[]): number {
  return Math.max(LEAST_POURING, ...plastics.map(({ working, highest = 0 }) => working?.to ?? highest));
}

/** The heat that a cup may reach. */
export interface HeatLimit {
  readonly celsius: number;
  /** The material that sets it. */
  readonly material: string;
  /** It is the top of that plastic's pouring range, since the shelf has no highest temperature of it. */
  readonly ofRange?: true;
}

/** How hot a cup may get, as far as the shelf says. */
export interface CupHeat {
  readonly limit?: HeatLimit;
  /** What is in the cup and has no highest temperature on the shelf. */
  readonly limitUnknown: readonly string[];
}

/**
 * The lowest of the highest temperatures of all that is in a cup; of a plastic without one, the top of its pouring range.
 *
 * What stands more than the plastic never raises the limit: where the shelf says nothing of the plastic, nothing counts that lies above what
 * plastisol is poured at. Common practice, no source.
 *
 * @param materials what is in the plastic
 */
export function heatLimit(
  plastics: readonly string[],
  materials: readonly string[],
  shelf: (id: string) => HeatMaterial | undefined,
): CupHeat {
  const limits = (ids: readonly string[]): readonly HeatLimit[] =>
    ids.flatMap((material): readonly HeatLimit[] => {
      const { highest, working } = shelf(material) ?? {};
      if (highest !== undefined) return [{ celsius: highest, material }];
      return working === undefined ? [] : [{ celsius: working.to, material, ofRange: true }];
    });
  const ofPlastic = lowest(limits(plastics));
  const most = ofPlastic?.celsius ?? POURING.most;
  const ofMaterial = lowest(limits(materials).filter(({ celsius }) => celsius <= most));
  const limit = ofMaterial ?? ofPlastic;
  return {
    ...defined({ limit }),
    limitUnknown: [...materials, ...plastics].filter((name) => shelf(name)?.highest === undefined),
  };
}

function lowest(limits: readonly HeatLimit[]): HeatLimit | undefined {
  return limits.reduce<HeatLimit | undefined>(
    (least, each) => (least !== undefined && least.celsius <= each.celsius ? least : each),
    undefined,
  );
}
