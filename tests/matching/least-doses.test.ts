import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Mix } from '../../src/matching/mix/mix.ts';
import { leastDoses, UNSEEN } from '../../src/matching/search/least-doses.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { CLEAR, SHELF } from './sample-shelf.ts';

const mix = new Mix({
  optics: USUAL_OPTICS,
  cups: [CLEAR.constants!],
  goals: [
    {
      layers: [{ cup: 0, thickness: 6 }],
      overWhite: { L: 8, a: 1, b: 1 },
      overBlack: { L: 8, a: 1, b: 1 },
    },
  ],
  candidates: SHELF.map(({ constants }) => ({ cup: 0, constants: constants!, load: 1, most: 0.06 })),
});
const every = SHELF.map((_, j) => j);

test('leastDoses(…) takes no more of anything, and leaves no difference that is seen', () => {
  const dose = fc.double({ min: 0, max: 0.06, noNaN: true });
  fc.assert(
    fc.property(fc.array(dose, { minLength: SHELF.length, maxLength: SHELF.length }), (amounts) => {
      const doses = Float64Array.from(amounts);
      const least = leastDoses(mix, every, doses);
      for (const j of every) expect(least[j]).toBeLessThanOrEqual(doses[j]!);
      expect(mix.worst(least)).toBeLessThanOrEqual(mix.worst(doses) + UNSEEN);
    }),
  );
});

test('leastDoses(…) takes a fraction of an ochre that hides all long before, and leaves all else as it is', () => {
  const ochre = SHELF.findIndex(({ id }) => id === 'ochre');
  const doses = new Float64Array(SHELF.length).with(ochre, 0.12).with(0, 0.001);
  const least = leastDoses(mix, [ochre], doses);
  expect(least[ochre]).toBeLessThan(0.06);
  expect(least.with(ochre, 0.12)).toEqual(doses);
});
