import type { Html } from '../html.ts';
import type { Coat } from './coat.ts';
import { flakePatterns, type PatternOptions } from './flake-pattern.ts';

/** Flake of the coats of one drawing. */
export interface CoatFlakes {
  readonly definitions: readonly Html[];
  /** What to lay over a coat, one over another. */
  fills(coat: Coat): readonly string[];
}

/** Draws the flake of each cup once, for all coats that show that cup at some depth. */
export function coatFlakes(coats: readonly Coat[], options: PatternOptions): CoatFlakes {
  const byCup = new Map<Coat['flakes'], Coat[]>();
  for (const coat of new Set(coats)) {
    if (coat.flakes.length > 0) byCup.set(coat.flakes, [...(byCup.get(coat.flakes) ?? []), coat]);
  }
  const fills = new Map<Coat, readonly string[]>();
  const definitions = [...byCup].flatMap(([flakes, alike], index) => {
    const patterns = flakePatterns(
      flakes,
      alike.map(({ depth }) => depth),
      { ...options, id: `${options.id}${index}`, seed: `${options.seed}/${index}` },
    );
    for (const [at, coat] of alike.entries()) fills.set(coat, patterns.fills[at]!);
    return patterns.definitions;
  });
  const behind = [...new Set(coats)].flatMap((coat, index) => {
    if (coat.behind === undefined) return [];
    const { flakes, depth, seen } = coat.behind;
    const far = { id: `${options.id}b${index}`, seed: `${options.seed}/b${index}`, budget: options.budget / 3, seen };
    const patterns = flakePatterns(flakes, [depth], { ...options, ...far });
    // What lies behind is painted first.
    fills.set(coat, [...patterns.fills[0]!, ...(fills.get(coat) ?? [])]);
    return patterns.definitions;
  });
  return { definitions: [...definitions, ...behind], fills: (coat) => fills.get(coat) ?? [] };
}
