import { describe, expect, test } from 'vitest';
import { compose } from '../../src/learning/composition.ts';
import { learn } from '../../src/learning/learn.ts';
import type { LearningData, LookedLayer, TaughtLook } from '../../src/learning/learning-data.ts';
import { Posterior } from '../../src/learning/posterior.ts';
import { type ChipQuestion, LEAST_GAIN, layerOf, worthLooking } from '../../src/matching/chips/worth-looking.ts';
import type { MatchMaterial } from '../../src/matching/shelf/match-material.ts';
import { simulatedBook } from '../learning/simulated-book.ts';
import { BENCH } from './sample-shelf.ts';

/** A shelf with a book of looks at it, of which some materials have none. */
function bookWithout(...left: readonly (string | undefined)[]): LearningData {
  const { data } = simulatedBook({ seed: 3, materials: 6, recipes: 30, rounds: 2 });
  const holds = ({ layers }: TaughtLook): boolean =>
    layers.some(({ contents }) => contents.some(([each]) => left.includes(each)));
  return { ...data, looks: data.looks.filter((look) => !holds(look)) };
}

const shelfOf = ({ materials }: LearningData): readonly MatchMaterial[] =>
  materials.flatMap(({ id, prior }): MatchMaterial[] =>
    'typical' in prior
      ? [
          {
            id,
            title: id,
            kind: prior.kind === 'pearl' ? 'powder' : 'colorant',
            density: 1,
            gramsPerMl: 0.5,
            ...(prior.kind === 'pearl' ? {} : { gramsPerDrop: 0.05 }),
            expectedDeltaE: 2,
            typical: prior.typical,
            constants: { absorption: new Float64Array(36), scattering: new Float64Array(36) },
          },
        ]
      : [],
  );

function ask(data: LearningData, more: Partial<ChipQuestion> = {}): ChipQuestion {
  const plastic = data.materials.find(({ prior }) => prior.kind === 'plastic')!.id;
  const white = data.materials.find(({ prior }) => prior.kind === 'white')?.id;
  return {
    shelf: shelfOf(data),
    ...(white === undefined ? {} : { white }),
    bench: BENCH,
    plasticMl: 100,
    thicknessMm: 6,
    belief: new Posterior(learn(data)),
    look: { axisSd: 0.4, means: 'instrument' },
    plastic,
    cups: [],
    bodyMm: 8,
    ...more,
  };
}

/** A look at a layer by which nothing is moved: it is as the shelf is believed to be. */
function seenAsBelieved({ belief }: ChipQuestion, layer: LookedLayer, key: string): TaughtLook {
  const { state, looker } = belief;
  const { white, black } = looker.views(compose(state.unknowns, [layer]), state, { white: true, black: true });
  return {
    key,
    cup: key,
    round: 1,
    layers: [layer],
    overWhite: white!.lab,
    overBlack: black!.lab,
    axisSd: 0.4,
    means: 'instrument',
  };
}

describe('worthLooking()', () => {
  const ids = simulatedBook({ seed: 3, materials: 6, recipes: 1, rounds: 1 }).data.materials.flatMap(({ id, prior }) =>
    prior.kind === 'pigment' || prior.kind === 'pearl' ? [id] : [],
  );

  test.each(ids)('asks sooner for a chip of a bottle that nobody has looked at: %s', (id) => {
    const place = (data: LearningData): number => {
      const told = worthLooking(ask(data), 12);
      const found = told.findIndex(({ doses }) => doses[0]!.material === id);
      if (found >= 0) expect(told[found]!.doubt.after).toBeLessThan(told[found]!.doubt.before);
      return found < 0 ? Number.POSITIVE_INFINITY : found;
    };
    expect(place(bookWithout(id))).toBeLessThan(4);
    expect(place(bookWithout(id))).toBeLessThanOrEqual(place(bookWithout(undefined)));
  });

  test.each(ids)('names the bottle first that nobody has looked at: %s', (id) => {
    const [first] = worthLooking(ask(bookWithout(id)), 1);
    expect(first!.doses[0]!.material).toBe(id);
  });

  test('is right about what the chip leaves: asked again with it, the doubt is what was promised', () => {
    const data = bookWithout(ids[0]);
    const question = ask(data);
    const [first] = worthLooking(question, 1);
    const look = seenAsBelieved(question, layerOf(first!, question.plastic), 'chips/first');
    const later = worthLooking({ ...ask({ ...data, looks: [...data.looks, look] }), cups: [] }, 30);
    const again = later.find(({ doses }) => doses[0]!.material === first!.doses[0]!.material);
    // Asked for the same bottle again, the doubt before is that after the first; asked for none, little was left.
    if (again) expect(again.doubt.before / first!.doubt.after).toBeCloseTo(1, 1);
    else expect(first!.doubt.after).toBeLessThan(3);
    expect(later[0]?.gain ?? 0).toBeLessThan(first!.gain);
  });

  test('asks for less and less, never for what was looked at, and at last for nothing', () => {
    let data = bookWithout(ids[0]);
    const asked: string[] = [];
    for (let count = 0; count < 60; count++) {
      const question = ask(data);
      const [next] = worthLooking(question, 1);
      if (next === undefined) break;
      expect(next.gain).toBeGreaterThanOrEqual(LEAST_GAIN);
      asked.push(next.doses.map(({ material, measure }) => `${measure.text} ${material}`).join(' + '));
      const look = seenAsBelieved(question, layerOf(next, question.plastic), `chips/${count}`);
      data = { ...data, looks: [...data.looks, look] };
    }
    expect(new Set(asked).size).toBe(asked.length);
    expect(worthLooking(ask(data), 1)).toEqual([]);
  }, 60_000);

  test('asks for two bottles that nobody has looked at in one chip, which tells more than either by itself', () => {
    const [one, other] = ids as [string, string];
    const question = ask(bookWithout(one, other));
    const [first] = worthLooking(question, 1);
    expect(first!.doses.map(({ material }) => material).sort()).toEqual([one, other].sort());
    for (const id of [one, other]) {
      const [alone] = worthLooking({ ...question, shelf: question.shelf.filter((each) => each.id !== id) }, 1);
      expect(alone!.gain).toBeLessThan(first!.gain);
    }
  });

  test('counts the recipes that nobody has seen and whose doubt falls to half', () => {
    const [id, other] = ids as [string, string];
    const data = bookWithout(id);
    const plastic = ask(data).plastic;
    const cup = (material: string): LookedLayer => ({
      plastics: [[plastic, 1]],
      contents: [[material, 0.002]],
      thicknessMm: 8,
    });
    const [first] = worthLooking(
      ask(data, {
        cups: [
          { recipe: 'unseen', layer: cup(id), seen: false },
          { recipe: 'seen', layer: cup(id), seen: true },
          { recipe: 'of-what-is-known', layer: cup(other), seen: false },
        ],
      }),
      1,
    );
    expect(first!.halves).toEqual(['unseen']);
  });
});
