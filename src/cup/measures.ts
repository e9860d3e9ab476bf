import { formatDecimal } from '../units/format-quantity.ts';
import { scaleText } from '../units/scale-step.ts';
import type { Bench, BenchMaterial, Measure, Spoon } from './bench.ts';

// With a scale at hand nobody levels more spoons than two over a hot cup; without one nobody levels more than six. Common practice, no source.
const MOST_SPOONFULS = { besideScale: 2, alone: 6 } as const;

// Nobody counts further: common practice, no source. More of a liquid is spooned or weighed where the bench can.
const MOST_DROPS = 100;

/**
 * The ways to measure about `grams` of a material with the bench's own tools, nearest first: whole drops, sums of level spoons,
 * or steps of the scale. Never empty, never zero: what is too little for every tool is the smallest measure of one.
 *
 * A liquid is dropped where the bench drops and can count that far, a powder or flake is spooned where there are spoons: beside a scale with two
 * spoonfuls at most. The scale serves otherwise.
 */
export function measures(grams: number, material: BenchMaterial, bench: Bench): readonly Measure[] {
  const fewDrops = grams <= MOST_DROPS * (material.gramsPerDrop ?? 0);
  const otherTools = bench.spoons.length > 0 || bench.scaleGrams !== undefined;
  const found =
    material.gramsPerDrop !== undefined && bench.drops && (fewDrops || !otherTools)
      ? dropMeasures(grams, material.gramsPerDrop)
      : bench.spoons.length > 0
        ? spoonMeasures(grams, material.gramsPerMl, bench)
        : bench.scaleGrams !== undefined
          ? [weighed(grams, bench.scaleGrams)]
          : [{ grams, text: `${formatDecimal(grams)} g`, tool: 'none' as const, effort: 1 }];
  return [...found].sort(
    (one, other) => Math.abs(one.grams - grams) - Math.abs(other.grams - grams) || one.effort - other.effort,
  );
}

// A fifth is what a careful level spoon may be off by, twice its spread: convention of this book.
const NEAR = 0.2;

/** Whether a measure comes near an amount: within a fifth of it. */
export function isNear(measuredGrams: number, grams: number): boolean {
  return Math.abs(measuredGrams / grams - 1) <= NEAR + 1e-9;
}

/** An amount by the scale, rounded to its step (g) and at least one step, in the words of its display. */
export function weighed(grams: number, step: number): Measure {
  const steps = Math.max(1, Math.round(grams / step));
  return { grams: steps * step, text: scaleText(steps * step, step), tool: 'scale', effort: 1 };
}

/** Whether a scale's step (g) is fine enough for an amount: half of it is a fifth of the amount at most. */
export function isWeighable(grams: number, step: number): boolean {
  return isNear(grams + step / 2, grams);
}

/** Whether a measure is as good as its tool: a scale's step (g) is fine enough for it. */
export function isSure({ tool, grams }: Measure, { scaleGrams = 0 }: Bench): boolean {
  return tool !== 'scale' || isWeighable(grams, scaleGrams);
}

// What a scale shows is as good as the amount within this: convention of this book.
const AS_EXACT = 0.05;

/**
 * An amount (g) as a scale shows it, for those who would rather weigh than count and spoon. Undefined where its step (g) is too coarse
 * for that: what it shows is more than a twentieth off, or half a step is more than a fifth of the amount.
 *
 * @example weighedAsExact(0.8, 0.01) // '0.80 g'
 * @example weighedAsExact(0.85, 0.28349523125) // '0.03 oz (0.85 g)'
 * @example weighedAsExact(0.71, 0.28349523125) // undefined: 0.03 oz is a fifth more
 */
export function weighedAsExact(grams: number, step: number): string | undefined {
  const shown = weighed(grams, step);
  const isExact = Math.abs(shown.grams / grams - 1) <= AS_EXACT;
  return isExact && isWeighable(grams, step) ? shown.text : undefined;
}

function dropMeasures(grams: number, gramsPerDrop: number): Measure[] {
  const exact = grams / gramsPerDrop;
  const counts = new Set([Math.max(1, Math.floor(exact)), Math.max(1, Math.ceil(exact))]);
  return [...counts].map((count) => ({
    grams: count * gramsPerDrop,
    text: `${count} drop${count === 1 ? '' : 's'}`,
    tool: 'drops',
    effort: 1,
  }));
}

function spoonMeasures(grams: number, gramsPerMl: number, { spoons, scaleGrams }: Bench): readonly Measure[] {
  const ml = grams / gramsPerMl;
  const most = scaleGrams === undefined ? MOST_SPOONFULS.alone : MOST_SPOONFULS.besideScale;
  if (scaleGrams !== undefined && ml > most * spoons[0]!.ml && isWeighable(grams, scaleGrams))
    return [weighed(grams, scaleGrams)];
  const byText = new Map<string, Measure>();
  for (const [index, finest] of spoons.entries()) {
    for (const count of [Math.floor(ml / finest.ml + 1e-9), Math.ceil(ml / finest.ml - 1e-9)]) {
      const measure = spoonfuls(count * finest.ml, spoons.slice(0, index + 1), gramsPerMl);
      if (measure && measure.effort <= most) byText.set(measure.text, measure);
    }
  }
  const smallest = spoons.at(-1)!;
  if (byText.size > 0) return nearestByEffort([...byText.values()], grams);
  const least = ml < smallest.ml ? smallest : spoons[0]!;
  return [spoonfuls(Math.max(1, Math.round(ml / least.ml)) * least.ml, [least], gramsPerMl)!];
}

/** Keeps the measures that are nearer than every one which takes fewer spoonfuls. */
function nearestByEffort(found: readonly Measure[], grams: number): Measure[] {
  const away = (measure: Measure): number => Math.abs(measure.grams - grams);
  return found.filter(
    (measure) => !found.some((other) => other.effort < measure.effort && away(other) <= away(measure)),
  );
}

/** A volume as a sum of level spoons, the largest first; undefined if it is nothing. */
function spoonfuls(ml: number, spoons: readonly Spoon[], gramsPerMl: number): Measure | undefined {
  const parts: string[] = [];
  let left = ml;
  let measured = 0;
  let effort = 0;
  for (const spoon of spoons) {
    const count = Math.floor(left / spoon.ml + 1e-9);
    if (count === 0) continue;
    parts.push(count === 1 ? spoon.name : `${count} × ${spoon.name}`);
    left -= count * spoon.ml;
    measured += count * spoon.ml;
    effort += count;
  }
  return effort === 0 ? undefined : { grams: measured * gramsPerMl, text: parts.join(' + '), tool: 'spoons', effort };
}
