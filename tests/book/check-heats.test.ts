import { describe, expect, test } from 'vitest';
import { bookWith, compileWith, file, recipeOf } from './sample.ts';

const FLAKE = 'look: { colour: "#a05a2c" }\nsize: 0.040 in';
const SHELF = {
  'shelf/flakes/copper.md': file(`title: Copper\n${FLAKE}\nbears: 2 heats`),
  'shelf/flakes/tin.md': file(`title: Tin\n${FLAKE}`),
  'shelf/flakes/prism.md': file(`title: Prism\n${FLAKE}\nfinish: hologram`),
  'shelf/additives/salt.md': file('title: Salt\nuse: salt'),
};
const logged = (...steps: readonly string[]): Record<string, string> => ({
  ...SHELF,
  'colours/logged.md': file(
    `title: Logged\nmold: minnow\ncups:\n  body:\n    plastic: 200 ml supple\n    log:\n${steps.map((step) => `      - ${step}`).join('\n')}`,
  ),
});
/** Line and finding of what is told of heats. */
const told = (...steps: readonly string[]): readonly string[] =>
  compileWith(logged(...steps)).diagnostics.flatMap(({ code, start, found, expected }) =>
    code === 'recipe/worn' || code === 'recipe/held-long' ? [`${start.line - 7}: ${found} | ${expected}`] : [],
  );

const AGAIN = '{ reheat: true, pour: 1 ml }';
const USUAL = (from: number, to: number): string =>
  `at most ${from} to ${to} heats, as such materials bear (common practice, no source)`;

describe('heats of a log, by the table of common practice: 5, 3 and 2 heats are the least that plastic, metal and hologram bear', () => {
  test('compileBook tells of the step that is one too many, once', () => {
    expect(told('{ add: { copper: 1/8 tsp }, pour: 9 ml }', AGAIN)).toEqual([]);
    expect(told('{ add: { copper: 1/8 tsp }, pour: 9 ml }', AGAIN, AGAIN, AGAIN)).toEqual([
      '3: third heat of Copper | at most two, as `bears` has it in its file',
    ]);
  });

  test('compileBook counts each material from the heat in which it went in', () => {
    expect(told('{ pour: 9 ml }', AGAIN, '{ reheat: true, add: { copper: 1/8 tsp }, pour: 9 ml }', AGAIN)).toEqual([]);
    expect(
      told('{ pour: 9 ml }', AGAIN, '{ reheat: true, add: { copper: 1/8 tsp }, pour: 9 ml }', AGAIN, AGAIN),
    ).toEqual(['5: third heat of Copper | at most two, as `bears` has it in its file']);
  });

  test('compileBook says of what nobody has said that it is common practice', () => {
    const all = '{ add: { prism: 1/8 tsp, tin: 1/8 tsp, peat: 3 drops, salt: 2 g }, pour: 9 ml }';
    expect(told(all, AGAIN, AGAIN, AGAIN, AGAIN)).toEqual([
      `3: third heat of Prism | ${USUAL(2, 3)}`,
      `4: fourth heat of Tin | ${USUAL(3, 4)}`,
    ]);
    expect(told(all, AGAIN, AGAIN, AGAIN, AGAIN, AGAIN).at(-1)).toBe(`6: sixth heat of Supple, Peat | ${USUAL(5, 7)}`);
  });

  test('compileBook counts six heats where one of 165 °C and five up to 181 °C have no look between them', () => {
    const up = [169, 172, 175, 178, 181].map((celsius) => `{ reheat: true, heat: ${celsius} °C }`);
    const [cup] = recipeOf(
      bookWith(logged('{ add: { peat: 3 drops }, heat: 165 °C }', ...up, '{ pour: 9 ml }')),
      'logged',
    ).cups;
    expect([cup!.heats.heats, cup!.reheats, cup!.highestReached]).toEqual([6, 5, 181]);
  });

  test('compileBook counts the heat of a cup that was looked at cold, and tells of it where it went on', () => {
    const cold = '{ add: { copper: 1/8 tsp }, pour: 9 ml, seen: { over-white: "#8a6a45", after: next day } }';
    expect(
      told(
        cold,
        '{ add: { peat: 1 drop }, pour: 9 ml, seen: { over-white: "#7a5a35", after: next day } }',
        '{ pour: 9 ml }',
      ),
    ).toEqual(['3: third heat of Copper | at most two, as `bears` has it in its file']);
  });

  test('compileBook begins to count again with a new cup', () => {
    const begun = '{ new-cup: 100 ml supple, add: { copper: 1/8 tsp }, pour: 9 ml }';
    expect(told('{ add: { copper: 1/8 tsp }, pour: 9 ml }', AGAIN, begun, AGAIN)).toEqual([]);
    expect(told('{ add: { copper: 1/8 tsp }, pour: 9 ml }', AGAIN, begun, AGAIN, AGAIN)).toHaveLength(1);
  });

  test('compileBook begins with the first heat in a cup that is made from another', () => {
    const book = bookWith({
      ...logged('{ add: { copper: 1/8 tsp }, pour: 9 ml }', AGAIN),
      'colours/after.md': file(
        'title: After\nmold: minnow\ncups: { body: { from: logged/body, log: [{ add: { peat: 1 drop } }] } }',
      ),
    });
    expect(recipeOf(book, 'after').cups[0]!.heats.borne).toEqual({ supple: 1, copper: 1, peat: 1 });
  });

  test('compileBook adds up the time at heat of a cup, and warns beyond 20 minutes', () => {
    expect(told('{ held: 12 min, pour: 9 ml }', '{ held: 8 min, pour: 9 ml }')).toEqual([]);
    expect(told('{ held: 12 min, pour: 9 ml }', '{ held: 9 min, pour: 9 ml }', '{ held: 1 h, pour: 9 ml }')).toEqual([
      '2: 21 min above 160 °C in all | at most 20 to 30 min (common practice, no source)',
    ]);
    expect(told('{ held: 12 min, pour: 9 ml }', '{ new-cup: 90 ml supple, held: 12 min }')).toEqual([]);
  });
});
