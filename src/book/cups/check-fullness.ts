import { filledMl } from '../../cup/filled-ml.ts';
import { type CupState, cupVolume } from '../../cup/ledger.ts';
import { FULLNESS_LEEWAY } from '../../cup/plan-batch.ts';
import { volumeText } from '../../units/volume-text.ts';
import type { Settings } from '../model.ts';
import type { Report } from '../report.ts';
import { filledText } from '../settings.ts';
import type { FilledCup } from './fill-cup.ts';

/**
 * Reports a cup that was filled further than the book's `cup` and `fill` allow, at its start or while it was worked out. A cup
 * that says neither its plastic nor its rounds is told of where it comes from.
 *
 * @param volumePerGram ml that a gram of a material adds
 */
export function checkFullness(
  { spec, rounds, places, start }: FilledCup,
  settings: Pick<Settings, 'cupMl' | 'fill' | 'volume'>,
  volumePerGram: (material: string) => number,
  report: Report,
): void {
  const { fields, recipe, path } = spec;
  const most = filledMl(settings);
  const volume = (state: CupState): number => cupVolume(state, volumePerGram);
  const round = rounds.find(({ cup }) => volume(cup) > most * FULLNESS_LEEWAY);
  const first = volume(start) > most * FULLNESS_LEEWAY;
  if (!first && !round) return;
  const at =
    fields.plastic !== undefined && (first || !fields.log)
      ? ['plastic']
      : fields.log
        ? ['log', places[round?.first ?? 0] ?? 0]
        : undefined;
  if (!at) return;
  const ml = volume(first ? start : round!.cup);
  report.add(
    'recipe/over-full',
    recipe,
    [...path, ...at],
    {
      found: `${volumeText(ml, settings)} in the cup`,
      expected: `at most ${filledText(settings)}`,
      why: 'hot plastic foams and splashes',
      fix: `begin with less, or write the size of your cups as \`cup: … ${settings.volume}\` in book.md`,
    },
    'key',
  );
}
