import type { PlannedLine } from '../cup/batch.ts';
import type { Fills } from '../cup/injector.ts';
import { counted } from './sentence-text.ts';

/**
 * How often to fill the injector from a cup: "Injector: 4 shots a fill, 4 fills. Stir at every refill."
 *
 * @param moldTitle of several molds, each is named
 * @param sinks whether something in the cup sinks
 */
export function fillsText(fills: readonly Fills[], moldTitle: (mold: string) => string, sinks: boolean): string {
  const each = fills.map(({ mold, shotsAFill, fills: times }) => {
    const name = fills.length === 1 ? '' : `${moldTitle(mold)} `;
    return shotsAFill === 0
      ? `${name}takes more at a shot than it holds`
      : `${name}${counted(shotsAFill, 'shot')} a fill, ${counted(times, 'fill')}`;
  });
  return `Injector: ${each.join('; ')}.${sinks ? ' Stir at every refill.' : ''}`;
}

/** What a line of a batch makes: "24 baits in minnow-3 (26 made, 7 shots)". */
export function lineText({ baits, made, shots }: PlannedLine, where: string): string {
  const told = [...(made === undefined ? [] : [`${made} made`]), counted(shots, 'shot')].join(', ');
  return `${counted(baits, 'bait')} ${where} (${told})`;
}
