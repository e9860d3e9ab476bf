/**
 * How often a cup was heated, and what comes of it.
 *
 * @packageDocumentation
 */
import type { CupHeats } from '../cup/heats.ts';
import { HELD, type HeatsBorne } from '../cup/heats-borne.ts';
import type { LogRound } from '../cup/log-round.ts';
import type { AdditionHeat } from '../matching/proposals/addition-heat.ts';
import type { Proposal } from '../matching/proposals/proposal.ts';
import { formatTemperature, type TemperatureUnit } from '../units/format-quantity.ts';
import { inWords, ordinal } from '../units/ordinal.ts';
import { writtenDuration } from '../units/written-quantity.ts';
import { listText, sentence } from './sentence-text.ts';

/** The unit of a book's temperatures. */
export interface HeatUnit {
  readonly temperature: TemperatureUnit;
}

interface HeatedMaterial {
  readonly title: string;
  readonly bears?: HeatsBorne;
}

/** "third heat; Copper bears two": how often a cup was heated, and which of its materials bear no more. */
export function cupHeatsText(
  { heats, borne }: Pick<CupHeats, 'heats' | 'borne'>,
  shelf: (id: string) => HeatedMaterial | undefined,
): string {
  const spent = Object.keys(borne).flatMap((id) => {
    const { title, bears } = shelf(id) ?? {};
    return title === undefined || bears === undefined || borne[id]! < bears.from
      ? []
      : [{ title, bears, heats: borne[id]! }];
  });
  const told = byHeats(spent).map((group) => bearsOf(group, heats));
  return [`${ordinal(heats)} heat`, ...told].join('; ');
}

interface Borne {
  readonly title: string;
  readonly heats: number;
  readonly bears: HeatsBorne;
}

/** "Copper bears two", "Gold and Tin (their second) usually bear 3 to 4 (common practice, no source)" */
function bearsOf([first, ...others]: readonly [Borne, ...Borne[]], heats: number): string {
  const one = others.length === 0;
  const { from, to, usual } = first.bears;
  const names = listText([first, ...others].map(({ title }) => title));
  const own = first.heats === heats ? '' : ` (${one ? 'its' : 'their'} ${ordinal(first.heats)})`;
  const bear = one ? 'bears' : 'bear';
  return `${names}${own} ${usual ? `usually ${bear} ${from} to ${to} (common practice, no source)` : `${bear} ${inWords(from)}`}`;
}

/** What has borne more than it does: "Copper (its third) bears two". */
export function wornTexts(worn: readonly Borne[]): readonly string[] {
  return byHeats(worn).map((group) => bearsOf(group, 0));
}

/** Together what has borne as many, and bears as many. */
function byHeats(all: readonly Borne[]): readonly (readonly [Borne, ...Borne[]])[] {
  const groups = new Map<string, [Borne, ...Borne[]]>();
  for (const each of all) {
    const key = [each.heats, each.bears.from, each.bears.to, each.bears.usual].join();
    const group = groups.get(key);
    if (group) group.push(each);
    else groups.set(key, [each]);
  }
  return [...groups.values()];
}

/** "Copper and Brass bear two heats, counting the melt" */
export function bearsLeastText(titles: readonly string[], heats: number): string {
  const count = `${inWords(heats)} heat${heats === 1 ? '' : 's'}`;
  return `${listText(titles)} ${titles.length === 1 ? 'bears' : 'bear'} ${count}, counting the melt`;
}

/** "Third heat, to 171 °C, 6 min above 160 °C.": what a round did to the heat of its cup; nothing where nobody has noted anything. */
export function roundHeatText(
  { heats, newHeats, heatedTo, heldMinutes }: Pick<LogRound<never>, 'heats' | 'newHeats' | 'heatedTo' | 'heldMinutes'>,
  unit: HeatUnit,
): string | undefined {
  const isMelt = newHeats === heats;
  const first = ordinal(heats - newHeats + 1);
  const turn =
    newHeats > 1 ? `${first} to ${ordinal(heats)} heat` : isMelt || newHeats === 0 ? undefined : `${first} heat`;
  const peak = heatedTo === undefined ? undefined : `to ${formatTemperature(heatedTo, unit.temperature)}`;
  const named = turn ?? (peak && 'heated');
  const parts = [
    ...(named === undefined
      ? []
      : [turn === undefined ? `${named} ${peak}` : [turn, ...(peak ? [peak] : [])].join(', ')]),
    ...(heldMinutes === undefined ? [] : [heldText(heldMinutes, unit)]),
  ];
  return parts.length === 0 ? undefined : `${sentence(parts.join(', '))}.`;
}

/** "6 min above 160 °C" */
export function heldText(minutes: number, { temperature }: HeatUnit): string {
  return `${writtenDuration(minutes)} above ${formatTemperature(HELD.above, temperature)}`;
}

/** What a proposal does to the heat of its cup, and in which order it is to be done; sentences. */
export function additionHeatSentences(
  proposal: Pick<Proposal, 'heat' | 'thin' | 'additions'> | undefined,
  { temperature }: HeatUnit,
): readonly string[] {
  const { heat, thin, additions = [] } = proposal ?? {};
  if (heat === undefined) return [];
  const { costs, falls } = heat;
  const told = (celsius: number): string => formatTemperature(celsius, temperature);
  const then = additions.length > 0 ? ', then stir in the rest' : '';
  const cold = thin ? 'the plastic' : 'that';
  const down = falls && `Added cold, ${cold} takes the cup from ${told(falls.from)} down to about ${told(falls.to)}`;
  switch (costs) {
    case 'cooled':
      return [
        thin
          ? `The cup has cooled: put the plastic in cold, cook it all until it runs again${then}.`
          : 'The cup has cooled: melt it again first.',
        `That will be ${nextHeatText(heat)}.`,
      ];
    case 'falls':
      return [
        `${down}, too cold to pour: put it in first, cook the cup until it runs again${then}.`,
        `That will be ${nextHeatText(heat)}.`,
        ...(thin ? ['Heat the plastic in a cup of its own and add it hot, and it costs no heat.'] : []),
      ];
    case 'if-cooled':
      return [...(down ? [`${down}.`] : []), `If the cup has cooled, melting it again will be ${nextHeatText(heat)}.`];
    case 'no':
      return down ? [`${down}.`] : [];
  }
}

/** "its third heat, one too many: Copper bears two" */
function nextHeatText({ heat, worn }: AdditionHeat): string {
  const told = byHeats(worn).map((group) => bearsOf(group, heat));
  const many = worn.some(({ heats, bears }) => heats > bears.from + 1) ? 'too many' : 'one too many';
  return [`its ${ordinal(heat)} heat`, ...(told.length === 0 ? [] : [`${many}: ${told.join('; ')}`])].join(', ');
}
