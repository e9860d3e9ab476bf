import { freeName } from '../../book/read/free-name.ts';
import { plainText } from '../../book/read/plain-text.ts';
import { usualPattern } from '../../patterns/patterns.ts';
import { frontMatterText, type WrittenFields } from '../../recipe/write-front-matter.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import { typedOunces } from '../../units/volume-field.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';
import { writtenDuration, writtenTemperature } from '../../units/written-quantity.ts';
import { type FileStep, fileSteps } from './file-steps.ts';
import { measuredInFile } from './measured-by.ts';
import { exactThickness } from './thickness-field.ts';
import { plasticOf, type Work, type WorkAmount, type WorkCup } from './work.ts';
import { colourInFile } from './work-colour.ts';
import { cupNow, type LogShelf, type WorkLook, wholeLooks } from './work-log.ts';

/** What a recipe's file is made with. */
export interface RecipeFileOptions {
  /** `2026-03-14` */
  readonly made: string;
  /** Names of the recipes that the book has already. */
  readonly taken: ReadonlySet<string>;
  /** Name of the target that it is for, where that is not one of the book's yet. */
  readonly target?: string | undefined;
  /** What volumes were typed in; unset: ml. What was not typed so is in ml, to all its digits. */
  readonly unit?: VolumeUnit;
}

/** A file to take away. */
export interface TakenFile {
  /** The file's name, without its folder. */
  readonly name: string;
  readonly text: string;
}

/** Work as a recipe of the book: a file that `check` accepts. Its log is the log of the work, step for step. */
export function recipeFile(
  work: Work,
  { made, taken, target = work.target, unit = { volume: 'ml' } }: RecipeFileOptions,
): TakenFile {
  const title = titleOf(work);
  const fields = {
    title,
    made,
    pattern: usualPattern(work.cups.length),
    mold: work.mold,
    for: target,
    cups: Object.fromEntries(
      work.cups.map((cup, index) => [
        cup.name,
        cupFields(cup, { plastic: plasticOf(work, index), plasticMl: work.plasticMl }, unit),
      ]),
    ),
    seen: baitsSeen(work, unit),
  };
  return { name: `${freeName(title, taken)}.md`, text: frontMatterText(fields) };
}

/** What was seen of finished baits, each with the rounds of the cups that it was poured after; of none, where a round was taken back since. */
function baitsSeen(work: Work, unit: VolumeUnit): readonly WrittenFields[] | undefined {
  const cups = work.cups.map((_, index) => cupNow(work, index, ROUNDS_ALONE));
  const found = wholeLooks(cups).flatMap(({ index, round, behind, look }) => {
    const [near, far] = [work.cups[index]!.name, work.cups[1 - index]?.name];
    const isThere = far !== undefined && cups[1 - index]!.rounds.some(({ number }) => number === behind);
    return isThere ? [{ ...seenFields(look, unit), side: near, rounds: { [near]: round, [far]: behind } }] : [];
  });
  return found.length === 0 ? undefined : found;
}

// Rounds have their numbers by what was done, however much of it there was: in so light a cup there is enough for every pour.
const ROUNDS_ALONE: LogShelf = { density: () => 0.01, cut: () => undefined };

function cupFields(
  { steps }: WorkCup,
  { plastic, plasticMl }: Pick<Work, 'plastic' | 'plasticMl'>,
  unit: VolumeUnit,
): WrittenFields {
  const ofCup = steps.filter((step) => step.do !== 'see' || step.behind === undefined);
  const log = fileSteps(ofCup).map((step) => stepFields(step, { plastic, plasticMl }, unit));
  return { plastic: `${exactVolume(plasticMl, unit)} ${plastic}`, log: log.length === 0 ? undefined : log };
}

function stepFields(
  { newCup, reheat, plasticMl, add, heat = {}, pourMl, see }: FileStep,
  start: Pick<Work, 'plastic' | 'plasticMl'>,
  unit: VolumeUnit,
): WrittenFields {
  const { plastic } = start;
  return {
    'new-cup': newCup && `${exactVolume(start.plasticMl, unit)} ${plastic}`,
    reheat,
    heat: heat.celsius === undefined ? undefined : writtenTemperature(heat.celsius),
    held: heat.heldMinutes === undefined ? undefined : writtenDuration(heat.heldMinutes),
    plastic: plasticMl === undefined ? undefined : `${exactVolume(plasticMl, unit)} ${plastic}`,
    add: add && Object.fromEntries(merged(add)),
    pour: pourMl === undefined ? undefined : exactVolume(pourMl, unit),
    seen: see && seenFields(see, unit),
  };
}

function seenFields(
  { overWhite, overBlack, measured, note, checked, thicknessMm, after, wet }: WorkLook,
  unit: VolumeUnit,
): WrittenFields {
  return {
    'over-white': overWhite && colourInFile(overWhite),
    'over-black': overBlack && colourInFile(overBlack),
    ...measuredInFile(measured),
    note: plainText(note ?? '') || undefined,
    checked,
    thickness: thicknessMm === undefined ? undefined : exactThickness(thicknessMm, unit),
    after,
    wet,
  };
}

/** A material twice in one step is written once, in grams. */
function merged(amounts: readonly WorkAmount[]): readonly (readonly [material: string, dose: string])[] {
  const all = new Map<string, readonly WorkAmount[]>();
  for (const amount of amounts) all.set(amount.material, [...(all.get(amount.material) ?? []), amount]);
  return [...all].map(([material, each]) => [
    material,
    each.length === 1
      ? each[0]!.dose
      : `${formatDecimal(
          each.reduce((sum, { grams }) => sum + grams, 0),
          DIGITS,
        )} g`,
  ]);
}

// More than were typed: rounded, a pour could be larger than what is left.
const DIGITS = 12;

function exactVolume(ml: number, { volume }: VolumeUnit): string {
  const ounces = volume === 'ml' ? undefined : typedOunces(ml);
  return ounces === undefined ? `${formatDecimal(ml, DIGITS)} ml` : `${ounces} fl oz`;
}

/** Name of the colour, or what stands for it. */
export function titleOf({ title }: Pick<Work, 'title'>): string {
  return plainText(title) === '' ? 'Matched at the bench' : plainText(title);
}
