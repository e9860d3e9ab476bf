import { cupLogs, type Work, type WorkStep } from './work.ts';

/**
 * Plastic that the cups of a match have begun with at least, ml, since that much was poured of them: those that were given up, too.
 *
 * @param density of a material, g/ml
 */
export function leastPlasticMl({ cups }: Pick<Work, 'cups'>, density: (material: string) => number): number {
  const logs = cups.flatMap(({ steps }) => cupLogs(steps));
  return Math.max(0, ...logs.map((log) => missingMl(log, density)));
}

/** What a log pours besides what went in after the start, ml. */
function missingMl(log: readonly WorkStep[], density: (material: string) => number): number {
  let wentIn = 0;
  let missing = 0;
  for (const step of log) {
    if (step.do === 'add') for (const { material, grams } of step.amounts) wentIn += grams / density(material);
    else if (step.do === 'plastic') wentIn += step.ml;
    else if (step.do === 'pour') {
      wentIn -= step.ml;
      missing = Math.max(missing, -wentIn);
    }
  }
  return missing;
}
