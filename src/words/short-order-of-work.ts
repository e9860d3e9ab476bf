import { type CupStep, type CupWork, hasSinking, type OrderOfWork } from '../book/recipes/order-of-work.ts';
import type { StepWords } from '../patterns/pattern.ts';
import { PATTERNS } from '../patterns/patterns.ts';
import { SHOT_TOGETHER } from '../tables/bench-practice.ts';
import { fromTo, type WorkNames } from './order-of-work.ts';
import { listText } from './sentence-text.ts';
import { temperatureSpan } from './temperature-text.ts';

/**
 * The order of work as a card has room for it: stage by stage, with the names of the cups where something goes into some of them only. What
 * colours is called by its kind, since the card lists it cup by cup.
 */
export function shortWorkWords(work: OrderOfWork, names: WorkNames): readonly StepWords[] {
  const { cups, dried, filling, pattern } = work;
  const { title } = names;
  const { together, pour } = PATTERNS[pattern];
  const stage = (begin: string, done: readonly CupStep['do'][], end: string): readonly StepWords[] => {
    const parts = staged(cups, done, title);
    return parts.length === 0 ? [] : [[begin, ...parts, end]];
  };
  return [
    [
      'Shake the plastic, let it stand; measure out before you heat.',
      ...(dried.length === 0 ? [] : [` Dry ${listText(dried.map(title))}, and keep it warm.`]),
    ],
    ...stage('Into the cold plastic: ', ['cold'], '.'),
    heating(cups),
    ...stage('Stir in ', ['stir-in'], ', until no streaks are left.'),
    ['Off the heat: bubbles up, check the temperature.'],
    ...stage('Last: ', ['sinks', 'last'], cups.some(hasSinking) ? '. Stir before every pour.' : '.'),
    ...(together
      ? [
          [
            `Cups within ${temperatureSpan(SHOT_TOGETHER.apart, names.settings)}, ${fromTo(SHOT_TOGETHER.seconds)} seconds off the heat.`,
          ],
        ]
      : []),
    ...pour(work.names, filling).slice(0, 1),
  ];
}

/** What goes in at a stage, each thing once: where it does not go into every cup, with the names of those that it goes into. */
function staged(cups: readonly CupWork[], done: readonly CupStep['do'][], title: (id: string) => string): StepWords {
  const cupsOf = new Map<string, string[]>();
  for (const { name, steps } of cups)
    for (const step of steps.filter((each) => done.includes(each.do)))
      for (const words of goingIn(step, title)) cupsOf.set(words, [...(cupsOf.get(words) ?? []), name]);
  return [...cupsOf].flatMap(([words, into], index): StepWords => {
    const begin = `${index === 0 ? '' : ', then '}${words}`;
    if (into.length === cups.length) return [begin];
    const named = into.flatMap((cup, place) => [...(place === 0 ? [] : [', ']), { cup }]);
    return [`${begin} (`, ...named, ')'];
  });
}

function goingIn(step: CupStep, title: (id: string) => string): readonly string[] {
  const any = (ids: readonly string[], together: string): readonly string[] => (ids.length === 0 ? [] : [together]);
  switch (step.do) {
    case 'cold':
      return [...step.liquids.map(title), ...any(step.powders, 'the powder, wetted')];
    case 'stir-in':
      return [...any(step.liquids, 'the colorant'), ...any(step.powders, 'the powder, wetted')];
    case 'sinks':
      return [...any(step.flake, 'the flake'), ...step.others.map(title)];
    case 'last':
      return step.materials.map(title);
    case 'heat':
    case 'rest':
      return [];
  }
}

/** Until when to heat: the milky cups by name, where not all are. */
function heating(cups: readonly CupWork[]): StepWords {
  const milky = cups.filter(({ steps }) => steps.some((step) => step.do === 'heat' && step.until === 'syrup'));
  const begin = 'Heat in short bursts, stirring well, until';
  const syrup = 'it runs like syrup and its dull jelly look is gone';
  if (milky.length === 0) return [`${begin} it is clear and runs.`];
  if (milky.length === cups.length) return [`${begin} ${syrup}.`];
  return [`${begin} it is clear and runs; `, ...milky.flatMap(({ name }) => [{ cup: name }, ' ']), `until ${syrup}.`];
}
