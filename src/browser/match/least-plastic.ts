import { cupLogs, type Work, type WorkStep } from './work.ts';
import type { LogShelf } from './work-log.ts';

/**
 * Plastic that the cups of a match have begun with at least, ml, since that much was poured of them: those that were given up, too.
 */
export function leastPlasticMl({ cups }: Pick<Work, 'cups'>, shelf: LogShelf): number {
  const logs = cups.flatMap(({ steps }) => cupLogs(steps));
  return Math.max(0, ...logs.map((log) => missingMl(log, shelf)));
}

/** What a log pours besides what went in after the start, ml. */
function missingMl(log: readonly WorkStep[], shelf: LogShelf): number {
  let wentIn = 0;
  let missing = 0;
  for (const step of log) {
    if (step.do === 'add') for (const { material, grams } of step.amounts) wentIn += grams / shelf.density(material);
    else if (step.do === 'plastic') wentIn += step.ml;
    else if (step.do === 'pour') {
      wentIn -= step.ml;
      missing = Math.max(missing, -wentIn);
    }
  }
  return missing;
}
