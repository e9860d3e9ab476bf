import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { filesBelow } from './folder-tree.ts';
import { ROOT } from './run-cupbook.ts';

/** Gear of a kitchen, and open fire: on the page Care neither comes near the bench. */
const KITCHEN =
  /\b(?:kitchen|stove|kettle|(?<!microwave )oven|saucepan|pan|strainer|coffee|mug|biscuit|sweet tin|sandwich|candle|flame|camping gas|blowlamp|barbecue)\b/i;

/** Sentences of a text that bring a kitchen to the bench; those that keep it away say never or no. */
function fromTheKitchen(text: string): readonly string[] {
  return text.split(/(?<=[.!?:;])\s+/).filter((each) => KITCHEN.test(each) && !/\b(?:never|no)\b/i.test(each));
}

test('the test sees what contradicts Care, and lets the foreword say so', () => {
  for (const text of [
    'on Thursdays we light the stove, open both windows and pour.',
    'Weighed on the kitchen scale, ten worms together.',
    'Spooned level into the tea strainer.',
    "Popcorn salt, ground again in the club's dead coffee mill.",
    'kept in a cough-sweet tin.',
  ])
    expect([text, fromTheKitchen(text)]).toEqual([text, [text]]);
  expect(fromTheKitchen('The spoons never go home to a kitchen. No flame in the room.')).toEqual([]);
});

test('no recipe and no foreword of the demo book uses food gear or an open fire', () => {
  const paths = filesBelow(join(ROOT, 'recipes')).filter((path) => path.endsWith('.md'));
  expect(paths.length).toBeGreaterThan(50);
  for (const path of paths)
    expect([path, fromTheKitchen(readFileSync(join(ROOT, 'recipes', path), 'utf8'))]).toEqual([path, []]);
});
