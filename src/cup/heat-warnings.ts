import type { CupHistory } from './cup-log.ts';
import { BURNT, HEAT_ROUNDING, type HeatLimit, type HeatMaterial, heatLimit } from './heat-limit.ts';
import { HELD, type HeatsBorne, isWorn } from './heats-borne.ts';
import type { LogRound } from './log-round.ts';

/** What was too much of heat for a cup. */
export type HeatWarning =
  | { readonly kind: 'burnt'; readonly celsius: number }
  | { readonly kind: 'too-hot'; readonly celsius: number; readonly limit: HeatLimit }
  | { readonly kind: 'worn'; readonly material: string; readonly heats: number; readonly bears: HeatsBorne }
  | { readonly kind: 'held'; readonly minutes: number };

/** What a temperature does to a cup with this limit; undefined where it stands that. */
export function tooHot(celsius: number, limit: HeatLimit | undefined): HeatWarning | undefined {
  if (celsius > BURNT) return { kind: 'burnt', celsius };
  return limit !== undefined && celsius > limit.celsius + HEAT_ROUNDING
    ? { kind: 'too-hot', celsius, limit }
    : undefined;
}

/** What was too much of heat for the cup that a log ends with. */
export function heatWarnings(
  {
    rounds,
    last,
    heats,
  }: Pick<CupHistory<never>, 'last' | 'heats'> & {
    readonly rounds: readonly Pick<LogRound<never>, 'pouredAway' | 'heatedTo'>[];
  },
  shelf: (id: string) => (HeatMaterial & { readonly bears?: HeatsBorne }) | undefined,
): readonly HeatWarning[] {
  const begun = rounds.findLastIndex(({ pouredAway }) => pouredAway !== undefined);
  const peaks = rounds.slice(Math.max(0, begun)).flatMap(({ heatedTo }) => heatedTo ?? []);
  const { limit } = heatLimit(Object.keys(last.plastics), Object.keys(last.materials), shelf);
  const hot = peaks.length === 0 ? undefined : tooHot(Math.max(...peaks), limit);
  const worn = Object.entries(heats.borne).flatMap(([material, count]): readonly HeatWarning[] => {
    const { bears } = shelf(material) ?? {};
    return bears !== undefined && isWorn(count, bears) ? [{ kind: 'worn', material, heats: count, bears }] : [];
  });
  const { heldMinutes = 0 } = heats;
  return [
    ...(hot ? [hot] : []),
    ...worn,
    ...(heldMinutes > HELD.from ? [{ kind: 'held', minutes: heldMinutes } as const] : []),
  ];
}
