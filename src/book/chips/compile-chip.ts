import { heatLimit } from '../../cup/heat-limit.ts';
import { concentrations, total } from '../../cup/ledger.ts';
import { isHeatProof } from '../../kinds/additive-uses.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { CHIP_MM } from '../../tables/material-defaults.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { checkHeat } from '../cups/check-heat.ts';
import { checkSeen, checkUnlogged } from '../cups/check-seen.ts';
import type { ChipSpec } from '../cups/chip-spec.ts';
import { contentsOf } from '../cups/compile-cup.ts';
import type { FilledCup, FilledRound } from '../cups/fill-cup.ts';
import { judgedFirst } from '../looks/judged-first.ts';
import type { Chip, ChipRound } from '../model/chip.ts';
import type { Settings } from '../model.ts';
import type { Report } from '../report.ts';
import { checkLoads } from '../shelf/check-loads.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';

/** A chip of which the ledger was kept, and what is wrong with what was seen of it. */
export function compileChip(
  filled: FilledCup<ChipSpec>,
  shelf: ReadonlyMap<string, MaterialCore>,
  settings: Pick<Settings, 'volume' | 'temperature'>,
  report: Report,
): Chip {
  const { spec, state, contents } = filled;
  const thing = spec.recipe;
  const { title, made, publish } = thing.fields;
  const plastics = Object.keys(state.plastics);
  const heatable = Object.keys(contents).filter((id) => !isHeatProof(shelf.get(id)));
  const { limit } = heatLimit(plastics, heatable, (id) => shelf.get(id));
  checkHeat(filled, () => limit, shelf, settings.temperature, report);
  checkLooks(filled, report);
  const plasticMl = total(state.plastics);
  const density = plastics.reduce(
    (sum, id) => sum + ((state.plastics[id] ?? 0) / plasticMl) * required(shelf, id).density,
    0,
  );
  checkLoads(filled, density, shelf, settings, report);
  return {
    id: thing.id,
    title,
    ...defined({ made }),
    publish,
    notes: thing.notes,
    rounds: filled.rounds.map(compileRound),
    source: thing.source,
  };
}

function compileRound({ number, cup, seen, note }: FilledRound): ChipRound {
  const plasticMl = total(cup.plastics);
  return {
    number,
    contents: contentsOf(concentrations(cup)),
    cuts: Object.keys(cup.cuts ?? {})
      .sort()
      .map((material) => ({ material })),
    plastics: Object.entries(cup.plastics).map(([material, ml]) => ({ material, fraction: ml / plasticMl })),
    seen: seen.map((look) => ({ ...look, thicknessMm: look.thicknessMm ?? CHIP_MM })),
    ...defined({ note }),
  };
}

/** Reports a chip of which nobody has seen a colour, one of which it is said in two places, and what no chip looks like. */
function checkLooks(filled: FilledCup<ChipSpec>, report: Report): void {
  const { spec, rounds } = filled;
  const { log = [] } = spec.fields;
  const thing: Thing = spec.recipe;
  for (const [at, each] of (spec.seen ?? []).entries()) checkSeen(each, thing, ['seen', at], report);
  for (const [index, { seen = [] }] of log.entries())
    for (const [at, each] of seen.entries()) checkSeen(each, thing, ['log', index, 'seen', at], report);
  if (log.length > 0 && spec.seen !== undefined) {
    report.add(
      'chip/seen-and-log',
      thing,
      ['seen'],
      {
        found: '`seen` beside `log`',
        expected: 'what was seen in the step of the log that it was seen after',
        why: 'each step of a log is a chip of its own, and nobody can tell which of them this is',
        fix: 'move `seen` into its step, or write `add` in place of `log`',
      },
      'key',
    );
    return;
  }
  const isSeen = rounds.some(({ seen }) =>
    seen.some(({ overWhite, overBlack }) => overWhite !== undefined || overBlack !== undefined),
  );
  if (!isSeen) {
    report.add('chip/unseen', thing, [], {
      found: 'chip without a colour',
      expected: '`seen: { over-white: "#…", over-black: "#…" }`',
      why: 'a chip that nobody looked at teaches nothing',
      fix: 'look at it on a white and on a black card, and write both colours down',
    });
  }
  checkUnlogged(
    { ...filled, rounds: rounds.map((round) => ({ ...round, seen: judgedFirst(round.seen, CHIP_MM) })) },
    report,
  );
}
