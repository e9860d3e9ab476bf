import type { Shop } from '../../src/cup/plan-batch.ts';

/** A shop with drops, one spoon of 5 ml, and no scale. */
export const NO_SCALE: Shop = {
  drops: true,
  spoons: [{ ml: 5, name: '1 spoon' }],
  dropSpread: 0.1,
  spoonSpread: 0.1,
  loss: 0.1,
  rejects: 0,
  leftInCupMl: 3,
  cupMl: 350,
  fill: 0.5,
  tolerance: 2,
};
