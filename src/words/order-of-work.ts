import type { Settings } from '../book/model.ts';
import { type CupStep, hasSinking, type OrderOfWork } from '../book/recipes/order-of-work.ts';
import type { StepWords } from '../patterns/pattern.ts';
import { PATTERNS } from '../patterns/patterns.ts';
import { DRYING, FIRST_SHOTS, MOLD_WARM, SHOT_TOGETHER, STANDING_MIN, VACUUM } from '../tables/bench-practice.ts';
import type { Range } from '../units/shared-range.ts';
import { listText } from './sentence-text.ts';
import { temperatureRange, temperatureSpan } from './temperature-text.ts';

/** What the words need besides the order of work. */
export interface WorkNames {
  readonly title: (material: string) => string;
  readonly settings: Pick<Settings, 'temperature'>;
}

/** The order of work in words, as a page has room for it. */
export interface WorkWords {
  /** Once, before anything is heated. */
  readonly before: readonly StepWords[];
  readonly cups: readonly { readonly cup: string; readonly steps: readonly StepWords[] }[];
  readonly filling: readonly StepWords[];
}

/** `60 to 120`, or one number. */
export function fromTo({ from, to }: Range): string {
  return from === to ? `${to}` : `${from} to ${to}`;
}

/** The order of work, told cup by cup. */
export function workWords(work: OrderOfWork, names: WorkNames): WorkWords {
  return {
    before: beforeWords(work, names).map((step) => [step]),
    cups: work.cups.map(({ name, steps }, index) => {
      const earlier = work.cups.slice(0, index).flatMap((cup) => cup.steps);
      const ways = { alone: work.cups.length === 1, refilled: isInjected(work, 'injected'), earlier };
      return { cup: name, steps: cupWords(steps, ways, names.title) };
    }),
    filling: fillingWords(work, names.settings),
  };
}

/** Whether the bait is shot with an injector. */
function isInjected({ pattern, filling }: OrderOfWork, unsaid?: 'injected'): boolean {
  return (filling.method ?? unsaid) === 'injected' && !PATTERNS[pattern].byHand;
}

function beforeWords(
  { plastics, dried, filling: { method } }: OrderOfWork,
  { title, settings }: WorkNames,
): readonly string[] {
  const jugs = plastics.length > 1 ? 'jugs' : 'jug';
  const ofPlastics = plastics.length === 0 ? '' : ` of ${listText(plastics.map(title))}`;
  const { inHg, minutes, full } = VACUUM;
  return [
    `Shake or roll the ${jugs}${ofPlastics} until nothing is left on the bottom. Then get out the air you shook in: let ${plastics.length > 1 ? 'them' : 'it'} stand for ${fromTo(STANDING_MIN)} minutes, or pull a vacuum of ${fromTo(inHg)} inHg for ${fromTo(minutes)} minutes in a container no more than ${full} full.`,
    ...(dried.length === 0
      ? []
      : [
          `Dry ${listText(dried.map(title))} at ${temperatureRange(DRYING.celsius, settings)} for ${fromTo(DRYING.hours)} hours, and keep it warm: damp salt spits, and cold salt cools the cup.`,
        ]),
    `Have ${method === 'dipped' ? 'the rods' : 'the mold'} warm (${temperatureRange(MOLD_WARM, settings)}) and bone dry${method === 'poured' ? '; a plaster mold comes out of a drying oven, since damp plaster spits and pits the baits' : ''}. Measure everything out before you heat.`,
  ];
}

/** What is stirred in, with the powders that are wetted before. */
function wetted(liquids: readonly string[], powders: readonly string[], title: (id: string) => string): string {
  return listText([...liquids.map(title), ...powders.map((id) => `${title(id)} (wetted to a paste)`)]);
}

/** What the words for a cup hang on. */
interface CupWays {
  /** Whether there is no other cup, so that this one is poured as soon as it is ready. */
  readonly alone: boolean;
  /** Whether an injector is filled from it more than once. */
  readonly refilled: boolean;
  /** Steps of the cups before it: what was told of those is told in short. */
  readonly earlier: readonly CupStep[];
}

/** The steps of a cup, in one what goes in at the very end: nothing waits between what sinks and the pour. */
function cupWords(steps: readonly CupStep[], ways: CupWays, title: (id: string) => string): readonly StepWords[] {
  const isHeatedAsBefore = steps.some(
    (step) => step.do === 'heat' && ways.earlier.some((told) => told.do === 'heat' && told.until === step.until),
  );
  return steps.flatMap((step, index) => {
    const next = steps[index + 1];
    if (isHeatedAsBefore && step.do === 'heat') return [[heatedAsBefore(steps, title)]];
    if (isHeatedAsBefore && (step.do === 'stir-in' || step.do === 'rest')) return [];
    if (step.do === 'cold' && isWettedAsBefore(step, ways)) return [[coldWords(step, title, 'as before')]];
    if (step.do === 'last' && steps[index - 1]?.do === 'sinks') return [];
    const after = step.do === 'sinks' && next?.do === 'last' ? next.materials : [];
    return [[step.do === 'sinks' ? sinksWords(step, after, ways, title) : stepWords(step, title)]];
  });
}

/** From the cold cup to the rest off the heat, of a cup that is made as one before it. */
function heatedAsBefore(steps: readonly CupStep[], title: (id: string) => string): string {
  const stirred = steps.flatMap((step) =>
    step.do === 'stir-in' ? [`stir in ${wetted(step.liquids, step.powders, title)}, `] : [],
  );
  return `Heat it, ${stirred.join('')}let it rest and check the temperature, as before.`;
}

type ColdStep = Extract<CupStep, { do: 'cold' }>;

/** Whether a cup before has told how its powders are wetted, with the same. */
function isWettedAsBefore({ wetWith }: ColdStep, { earlier }: CupWays): boolean {
  return earlier.some((told) => told.do === 'cold' && told.powders.length > 0 && told.wetWith === wetWith);
}

function coldWords({ liquids, powders, wetWith }: ColdStep, title: (id: string) => string, told?: 'as before'): string {
  const liquid = liquids.length === 0 ? [] : [`Stir ${listText(liquids.map(title))} into the cold plastic.`];
  if (powders.length === 0) return liquid.join(' ');
  const names = listText(powders.map(title));
  const what = powders.length > 1 ? 'each with twice as much' : 'with twice as much';
  const wet =
    told === undefined
      ? `Wet ${names} ${what} ${wetWith === undefined ? '' : 'of the softener or '}of the plastic, to a paste without lumps, and stir it in cold: dry powder on hot plastic leaves pale specks.`
      : `Wet ${names} to a paste ${told}, and stir it in cold.`;
  return [...liquid, wet].join(' ');
}

/** @param after what goes in after that, as the last of all */
function sinksWords(
  { flake, others, within }: Extract<CupStep, { do: 'sinks' }>,
  after: readonly string[],
  { alone, refilled }: CupWays,
  title: (id: string) => string,
): string {
  const sinks = listText([...flake, ...others].map(title));
  const all = after.length === 0 ? sinks : `${sinks}, then ${listText(after.map(title))}`;
  const stir = alone ? `Stir in ${all}, and pour at once.` : `Just before you pour it, stir in ${all}.`;
  if (within === undefined) return stir;
  const seen = `Within ${fromTo(within)} seconds you see ${after.length === 0 ? 'it' : sinks} sink`;
  return `${stir} ${seen}: stir before every pour${refilled ? ', and at every refill' : ''}.`;
}

function stepWords(step: Exclude<CupStep, { do: 'sinks' }>, title: (id: string) => string): string {
  switch (step.do) {
    case 'cold':
      return coldWords(step, title);
    case 'heat':
      return step.until === 'clear'
        ? 'Heat it in short bursts, stirring from the bottom, until it turns clear and runs.'
        : 'Heat it in short bursts, stirring from the bottom, until it runs like syrup and its dull jelly look is gone. This plastic never turns clear.';
    case 'stir-in':
      return `Stir in ${wetted(step.liquids, step.powders, title)}, until no streaks are left.`;
    case 'rest':
      return 'Take it off the heat, let the bubbles rise, and check the temperature.';
    case 'last':
      return `Stir in ${listText(step.materials.map(title))} last of all, off the heat.`;
  }
}

function fillingWords(work: OrderOfWork, settings: Pick<Settings, 'temperature'>): readonly StepWords[] {
  const { pattern, names, filling } = work;
  const { together, ready, pour } = PATTERNS[pattern];
  const alone = names.length === 1;
  const many = FIRST_SHOTS === 2 ? 'two' : `${FIRST_SHOTS}`;
  const keep = alone ? 'back into the cup with them.' : 'keep them for a dark cup.';
  const firstShots = `The first shots of a cold mold, often ${many}, come out dull or short: ${keep}`;
  const poured = [...pour(names, filling), ...(isInjected(work) ? [[firstShots]] : [])];
  return [
    ...(together ? togetherWords(work, settings) : []),
    ...(ready === undefined ? [] : [[ready]]),
    // One cup is filled in one step.
    ...(alone ? [poured.flatMap((words, index) => (index === 0 ? words : [' ', ...words]))] : poured),
  ];
}

/** What is to be known of cups that are shot at once. */
function togetherWords({ cups }: OrderOfWork, settings: Pick<Settings, 'temperature'>): readonly StepWords[] {
  const last = cups.at(-1);
  const sinks = last !== undefined && hasSinking(last) && !cups.every(hasSinking);
  const all = cups.length === 2 ? 'both cups' : 'all cups';
  return [
    [
      ...(sinks ? ['Finish the ', { cup: last.name }, ' cup last, since what is in it sinks. '] : []),
      `Have ${all} within ${temperatureSpan(SHOT_TOGETHER.apart, settings)} of each other, and no more than ${fromTo(SHOT_TOGETHER.seconds)} seconds off the heat.`,
    ],
  ];
}
