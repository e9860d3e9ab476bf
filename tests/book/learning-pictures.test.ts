import { describe, expect, test } from 'vitest';
import { knownOverLooks } from '../../src/book/method/known-over-looks.ts';
import { learningPictures } from '../../src/book/method/learning-pictures.ts';
import { linesOfLooks } from '../../src/book/method/looks-on-a-line.ts';
import { absorptionBand } from '../../src/learning/absorption-band.ts';
import { Belief } from '../../src/learning/belief.ts';
import { learn } from '../../src/learning/learn.ts';
import type { TaughtLook } from '../../src/learning/learning-data.ts';
import { Posterior } from '../../src/learning/posterior.ts';
import { shelfState } from '../../src/learning/shelf-state.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { expectClose } from '../optics/close.ts';
import { WHOLE_DEMO_BOOK } from '../render/demo-book.ts';

const { light, line } = learningPictures(WHOLE_DEMO_BOOK);
const { learned } = WHOLE_DEMO_BOOK;

describe('what a label leaves open', () => {
  test('is less once something was looked at, and the middle lies in its band', () => {
    const { before, after, looks, material } = light!;
    expect(looks).toBe(material.learnedFrom);
    const width = ({ low, high }: typeof before): number =>
      high.reduce((sum, each, band) => sum + each - low[band]!, 0);
    expect(width(after)).toBeLessThan(0.7 * width(before));
    for (const { low, middle, high } of [before, after])
      for (const [band, value] of middle.entries()) {
        expect(value).toBeGreaterThanOrEqual(low[band]!);
        expect(value).toBeLessThanOrEqual(high[band]!);
        expect(high[band]!).toBeLessThanOrEqual(1);
      }
    expectClose(after.middle[10]!, Math.exp(-material.constants!.absorption[10]! * material.typical! * 3), 1e-5);
  });

  test('is as wide as ln K goes with the unknowns, moved one by one', () => {
    const id = light!.material.id;
    const alone = learn({ materials: learned.data.materials.filter((each) => each.id === id), looks: [] });
    const posterior = new Posterior(alone);
    const { unknowns } = posterior.state;
    const n = unknowns.count;
    const band = 12;
    const lnK = (theta: readonly number[]): number => {
      const { K, strength } = shelfState(unknowns, theta).materials[unknowns.placeOf.get(id)!]!;
      return Math.log(strength * K[band]!);
    };
    const slopes = alone.theta.map(
      (_, i) => lnK(alone.theta.map((value, j) => (i === j ? value + 1 : value))) - lnK(alone.theta),
    );
    let variance = 0;
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) variance += slopes[i]! * posterior.covariance[i * n + j]! * slopes[j]!;
    const { low, high } = absorptionBand(posterior, id);
    expectClose(Math.log(high[band]! / low[band]!) / 2, 1.6449 * Math.sqrt(variance), 1e-9);
  });
});

describe('a prediction along doses', () => {
  test('leans towards what was seen, most near it, and is surest there', () => {
    const { steps, seen } = line!;
    const [look] = seen;
    const at = steps.reduce((nearest, step) =>
      Math.abs(Math.log(step.gramsPerMl / look!.gramsPerMl)) < Math.abs(Math.log(nearest.gramsPerMl / look!.gramsPerMl))
        ? step
        : nearest,
    );
    const last = steps.at(-1)!;
    expect(Math.sign(at.more)).toBe(Math.sign(look!.more));
    expect(Math.abs(at.more)).toBeGreaterThan(Math.abs(last.more));
    expect(at.high - at.low).toBeLessThan(last.high - last.low);
    expect(at.high - at.low).toBeLessThan(steps[0]!.high - steps[0]!.low);
    for (const { more, low, high } of steps) expectClose(more, (low + high) / 2, 1e-9);
    // What is drawn for that is nothing to be doubted: the look is within nine in ten, and beyond what is believed.
    expect(look!.more / at.more).toBeGreaterThanOrEqual(1);
    expect(look!.more).toBeGreaterThan(at.low);
    expect(look!.more).toBeLessThan(at.high);
  });

  test('is drawn of a cup by itself that is believed', () => {
    const lines = linesOfLooks(WHOLE_DEMO_BOOK);
    expect(lines.map(({ material }) => material)).toContain(line!.material.id);
    for (const { seen } of lines)
      expect(seen.map(({ gramsPerMl }) => gramsPerMl)).toEqual(
        seen.map(({ gramsPerMl }) => gramsPerMl).toSorted((x, y) => x - y),
      );
    // Two pours of one chip that differ in the dose of its one material are on one line.
    const rust = lines.find(({ material, layer }) => material === 'rust' && layer.contents.length === 1);
    expect(rust!.seen).toHaveLength(2);
  });
});

describe('how well a book knew its colours', () => {
  const { stretches, left } = knownOverLooks(WHOLE_DEMO_BOOK)!;

  test('is told of each look once, by those before it', () => {
    expect(left).toBe(0);
    expect(stretches.reduce((sum, { off }) => sum + off.length, 0)).toBe(learned.data.looks.length);
    expect(stretches[0]!.taughtBy).toBe(0);
    for (const [index, { taughtBy, off }] of stretches.entries())
      expect(stretches[index + 1]?.taughtBy ?? learned.data.looks.length).toBe(taughtBy + off.length);
    expect(stretches.at(-1)!.median).toBeLessThan(stretches[0]!.median);
  });

  test('goes first by the files alone', () => {
    const files = new Belief(learn({ materials: learned.data.materials, looks: [] }));
    const all = learned.data.looks.map(({ layers, streaks, cup, overWhite, overBlack }) => {
      const shown = files.mean({ layers, cup, ...(streaks && { streaks }) });
      return Math.max(
        overWhite ? deltaE00(overWhite, shown.overWhite) : 0,
        overBlack ? deltaE00(overBlack, shown.overBlack) : 0,
      );
    });
    for (const off of stretches[0]!.off) expect(all.some((each) => Math.abs(each - off) < 0.02)).toBe(true);
  });

  test('hangs on the looks before it, and on no later ones', () => {
    const looked = WHOLE_DEMO_BOOK.recipes
      .flatMap(({ id, made }) => {
        const look = learned.data.looks.find(({ key, overWhite }) => overWhite && key.startsWith(`${id}/`));
        return look && made !== undefined ? [{ look, made }] : [];
      })
      .sort((one, other) => (one.made < other.made ? -1 : 1));
    const darker = (of: TaughtLook | undefined) => {
      const looks = learned.data.looks.map((look) =>
        look === of ? { ...look, overWhite: { ...look.overWhite!, L: look.overWhite!.L - 12 } } : look,
      );
      const changed = { ...learned, data: { ...learned.data, looks } };
      const after = knownOverLooks({ ...WHOLE_DEMO_BOOK, learned: changed })!.stretches;
      return after.map(({ off }, index) => off.filter((each, i) => each !== stretches[index]!.off[i]).length);
    };
    expect(darker(undefined)).toEqual(stretches.map(() => 0));
    expect(darker(looked.at(-1)!.look)).toEqual(stretches.map((_, index) => (index === stretches.length - 1 ? 1 : 0)));
    const [own, ...later] = darker(looked[0]!.look);
    expect(own).toBe(1);
    for (const changed of later) expect(changed).toBeGreaterThan(1);
  });

  test('says nothing of a book with hardly a look', () => {
    const few = { ...learned, data: { ...learned.data, looks: learned.data.looks.slice(0, 4) } };
    expect(knownOverLooks({ ...WHOLE_DEMO_BOOK, learned: few })).toBeUndefined();
  });
});
