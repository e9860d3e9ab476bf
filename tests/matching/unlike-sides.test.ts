import { describe, expect, test } from 'vitest';
import { type SideSeen, unlikeSides } from '../../src/matching/target/unlike-sides.ts';
import { labFromTristimulus } from '../../src/optics/cielab.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { lookDoubt } from '../../src/optics/look-doubt.ts';

/** Numbers from 0 to 1, the same in every run. */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A layer of K, S and a thickness over a backing (Kubelka 1948, from memory). */
function layerOver([K, S, X]: readonly [number, number, number], Rg: number): number {
  const a = 1 + K / S;
  const b = Math.sqrt(a * a - 1);
  const c = b / Math.tanh(b * S * X);
  return (1 - Rg * (a - c)) / (a - Rg + c);
}

/** Seen from outside, beside the gloss: Saunderson with k1 of 0.04 and k2 of 0.6. */
const outside = (R: number): number => (0.96 * 0.4 * R) / (1 - 0.6 * R);

type Layer = readonly [number, number, number];

/** Y of a grey bait of two layers over a card, from the side of the first. */
const bait = (near: Layer, far: Layer, card: number): number => outside(layerOver(near, layerOver(far, card)));

const grey = (Y: number): { L: number; a: number; b: number } => labFromTristimulus({ X: 0.9505 * Y, Y, Z: 1.089 * Y });

function side(name: string, white: number, black: number, doubt = lookDoubt('screen')): SideSeen {
  return { name, overWhite: grey(white), overBlack: grey(black), thicknessMm: 8, doubt };
}

function randomLayers(random: () => number): readonly [Layer, Layer] {
  const depth = (): number => 1e-3 * 5000 ** random();
  return [
    [depth(), depth(), 4],
    [depth(), depth(), 4],
  ];
}

const hexSide = (name: string, white: string, black: string): SideSeen => ({
  name,
  overWhite: labFromHex(white),
  overBlack: labFromHex(black),
  thicknessMm: 8,
  doubt: lookDoubt('screen'),
});

describe('unlikeSides', () => {
  test('asks of no body of two layers, whatever is in them and however sure the maker is', () => {
    const random = numbers(7);
    const sure = lookDoubt('instrument', 0.01);
    let [most, mostOfClear] = [0, 0];
    for (let n = 0; n < 20_000; n++) {
      const [back, belly] = randomLayers(random);
      const [one, other] = [side('back', bait(back, belly, 0.9), bait(back, belly, 0.03), sure)].concat(
        side('belly', bait(belly, back, 0.9), bait(belly, back, 0.03), sure),
      ) as [SideSeen, SideSeen];
      const through = [
        bait(back, belly, 0.9) - bait(back, belly, 0.03),
        bait(belly, back, 0.9) - bait(belly, back, 0.03),
      ];
      const [less, more] = through.sort((x, y) => x - y) as [number, number];
      if (less > 1e-6) most = Math.max(most, more / less);
      if (more > 0.25) mostOfClear = Math.max(mostOfClear, more / less);
      expect(unlikeSides([one, other])).toBeUndefined();
    }
    // The bodies were not all alike: some part by much, and those that let much through by little.
    expect(most).toBeGreaterThan(1.3);
    expect(most).toBeLessThan(1.47);
    expect(mostOfClear).toBeLessThan(1.05);
  });

  test('asks of hardly any bait that is looked at as vaguely as its maker says', () => {
    const random = numbers(11);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    let asked = 0;
    const looks = 4000;
    for (let n = 0; n < looks; n++) {
      const [back, belly] = randomLayers(random);
      const doubt = lookDoubt('screen');
      const looked = (Y: number): SideSeen['overWhite'] => {
        const lab = grey(Y);
        const step = deltaE00(lab, { ...lab, L: lab.L + 1 });
        return { ...lab, L: Math.max(0, lab.L + (normal() * doubt.axisSd) / step) };
      };
      const seen = (name: string, near: Layer, far: Layer): SideSeen => ({
        name,
        overWhite: looked(bait(near, far, 0.9)),
        overBlack: looked(bait(near, far, 0.03)),
        thicknessMm: 8,
        doubt,
      });
      if (unlikeSides([seen('back', back, belly), seen('belly', belly, back)])) asked++;
    }
    // Three deviations are 0.3 % of what is normal; the doubt is reckoned at the colour that was seen, not at that which is there.
    expect(asked / looks).toBeLessThan(0.012);
  });

  test('asks of an opaque back and a see-through belly that are said to be of one bait', () => {
    const [back, belly] = [hexSide('back', '#5b4a2f', '#483a26'), hexSide('belly', '#cdb98c', '#97865f')];
    expect(unlikeSides([back, belly])).toEqual({ more: 'belly', less: 'back', times: 9 });
    expect(unlikeSides([belly, back])).toEqual(unlikeSides([back, belly]));
    const solid = hexSide('back', '#3b4a2a', '#3b4a2a');
    expect(unlikeSides([solid, belly])).toEqual({ more: 'belly', less: 'back', times: 20, atLeast: true });
  });

  test('asks nothing where a card, a thickness or certainty is missing', () => {
    const [back, belly] = [hexSide('back', '#5b4a2f', '#483a26'), hexSide('belly', '#cdb98c', '#97865f')];
    const { overBlack: _, ...overWhiteAlone } = back;
    expect(unlikeSides([overWhiteAlone, belly])).toBeUndefined();
    expect(unlikeSides([back, { ...belly, thicknessMm: 7 }])).toBeUndefined();
    expect(unlikeSides([back, belly, { ...belly, name: 'head' }])).toBeUndefined();
    const vague = lookDoubt('screen', 12);
    expect(
      unlikeSides([
        { ...back, doubt: vague },
        { ...belly, doubt: vague },
      ]),
    ).toBeUndefined();
  });
});
