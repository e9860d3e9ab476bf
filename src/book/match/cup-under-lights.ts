import type { CupState } from '../../cup/ledger.ts';
import { type CupAim, shifted } from '../../matching/rounds/cup-aim.ts';
import type { SeenViews } from '../../matching/target/target-part.ts';
import { isMeasuredThroughout, targetUnder } from '../../matching/target/target-under-light.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import { OTHER_LIGHTS } from '../../tables/lights.ts';
import type { CupLights } from '../model/target.ts';

/**
 * How far a cup and its target are apart under other lights: what a light does to the cup is computed, and added to what the
 * cup looked like by daylight.
 *
 * @param views the cup by daylight as the target was seen: as noted, or predicted
 */
export function cupUnderLights({ part, views: computed }: CupAim, state: CupState, views: SeenViews): CupLights {
  const byDay = computed(state);
  return {
    basis: isMeasuredThroughout(part) ? 'measured' : 'estimated',
    views: OTHER_LIGHTS.map(({ light, name }) => {
      const under = computed(state, light);
      const target = targetUnder(part, light);
      const apart = (['overWhite', 'overBlack'] as const).flatMap((view) => {
        const [cup, wanted] = [shifted(views[view], byDay[view], under[view]), target[view]];
        return cup && wanted ? [deltaE00(cup, wanted)] : [];
      });
      return { light, name, deltaE: Math.max(...apart) };
    }),
  };
}
