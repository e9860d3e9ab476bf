/**
 * The attack on a look-only recipe: what its published digits tell of what is in the cup to somebody who has the shelf.
 *
 * @packageDocumentation
 */

import type { Appearance } from '../../../src/book/model/colours.ts';
import type { FlakeLoad } from '../../../src/book/model/recipe.ts';
import type { Material, Mold } from '../../../src/book/model/shelf.ts';
import type { Book } from '../../../src/book/model.ts';
import { HEAVY_FLAKE } from '../../../src/book/publish/look-only.ts';
import { PATTERNS, type Pattern } from '../../../src/patterns/patterns.ts';
import { MIDDLE } from '../../../src/patterns/place.ts';
import { type Box, BoxFitter } from './fit-box.ts';
import { LookModel, type Stack, suspectsOf } from './look-model.ts';
import { columnsOf, type FoundSet, minimalSets, THRIFTY, type Thrift } from './minimal-sets.ts';

/** A look as it is published, and the step that its colours are rounded to. */
export interface PublicLook {
  readonly id: string;
  readonly pattern: Pattern;
  readonly body: Appearance;
  readonly thin?: Appearance;
  readonly other?: Appearance;
  readonly flake: FlakeLoad;
  readonly step: number;
}

/** What the attacker has beside the look: the shelf with its K and S, the optics of the book, the mold, the plastic, and how the bait is shared out. */
export interface Knowledge {
  readonly materials: readonly Material[];
  readonly mold: Pick<Mold, 'bodyMm' | 'thinMm'>;
  readonly plastic: Material;
  readonly shares: readonly number[];
  readonly optics: Book['optics'];
}

/** What an attack has found. */
export interface Verdict {
  /** Sets of at most so many materials that have every digit, none of which holds another. */
  readonly sets: readonly (readonly string[])[];
  /** The material that is known best of those in all sets, if any is; g per ml of plastic. */
  readonly main?: {
    readonly material: string;
    readonly cup: number;
    readonly low: number;
    readonly high: number;
    readonly off: number;
  };
  /** Whether that is known within 20 %. */
  readonly open: boolean;
  readonly fits: number;
}

/** A dose is known where the middle of its range is off by less than this part of itself. */
export const KNOWN_WITHIN = 0.2;

/** The least flake that anybody would call flake: part of the lines of sight. */
const SOME_FLAKE = 0.02;

export interface AttackOptions {
  /** Most materials of a set; unset: 5. */
  readonly most?: number;
  readonly thrift?: Thrift;
  /** Ends as soon as the look is known not to be open: the sets are not all counted. */
  readonly untilClosed?: boolean;
}

/** The attack. */
export function attack(look: PublicLook, knowledge: Knowledge, options: AttackOptions = {}): Verdict {
  const { most = 5, thrift = THRIFTY, untilClosed = false } = options;
  const model = modelOf(look, knowledge);
  const box = boxOf(look);
  const isOpen = (known: Verdict['main']): boolean => known !== undefined && known.off <= KNOWN_WITHIN;
  const enough = (found: readonly FoundSet[]): boolean =>
    untilClosed && found.length > 0 && !isOpen(bestKnown(model, box, found));
  const { sets, fits } = minimalSets(model, box, most, { thrift, enough });
  const names = sets.map((set) => set.suspects.map((suspect) => model.suspects[suspect]!.id));
  const main = bestKnown(model, box, sets);
  return { sets: names, ...(main === undefined ? {} : { main }), open: isOpen(main), fits };
}

/** The model of a look: its stacks by its pattern, and the suspects that its word for flake leaves. */
export function modelOf(look: PublicLook, { materials, mold, plastic, shares, optics }: Knowledge): LookModel {
  const { pattern, flake, other } = look;
  const suspects = suspectsOf(materials).filter((suspect) => flake !== 'none' || suspect.flake === undefined);
  const { bodyMm, thinMm } = mold;
  const cup = (index: number, thickness: number): Stack => [{ cup: index, thickness }];
  if (other === undefined) {
    return new LookModel(suspects, plastic.constants!, [cup(0, bodyMm), cup(0, thinMm)], 1, [bodyMm], optics);
  }
  const { beside, through } = PATTERNS[pattern];
  if (beside) {
    const sight = shares.map((share) => share * bodyMm);
    return new LookModel(suspects, plastic.constants!, [cup(0, bodyMm), cup(1, bodyMm)], 2, sight, optics);
  }
  const side: Stack = through(shares, MIDDLE).map(({ cup: of, part }) => ({ cup: of, thickness: part * bodyMm }));
  const sight = side.map(({ thickness }) => thickness);
  return new LookModel(suspects, plastic.constants!, [side, side.toReversed()], side.length, sight, optics);
}

/** Every number of a look within half a step, and its flake as its word has it. */
export function boxOf({ body, thin, other, flake, step }: PublicLook): Box {
  const centres = [body, other ?? thin!].flatMap(({ overWhite, overBlack }) =>
    [overWhite.lab, overBlack.lab].flatMap(({ L, a, b }) => [L, a, b]),
  );
  const [least, most] = { none: [0, 0], light: [SOME_FLAKE, HEAVY_FLAKE], heavy: [HEAVY_FLAKE, 1] }[flake] as [
    number,
    number,
  ];
  return {
    low: Float64Array.from([...centres.map((centre) => centre - step / 2), least]),
    high: Float64Array.from([...centres.map((centre) => centre + step / 2), most]),
  };
}

/** Of the doses that no set goes without, the one with the narrowest range. */
function bestKnown(model: LookModel, box: Box, sets: readonly FoundSet[]): Verdict['main'] {
  const common = sets.reduce((mask, set) => mask & set.mask, sets.length === 0 ? 0 : -1);
  const fitter = new BoxFitter(model, box);
  const ranges = model.suspects.flatMap(({ id, usualDose }, suspect) => {
    if ((common & (2 ** suspect)) === 0) return [];
    return Array.from({ length: model.cups }, (_, cup) => {
      const [low, high] = doseRange(fitter, model.cups, sets, suspect, cup);
      return { material: id, cup, low: low * usualDose, high: high * usualDose, off: (high - low) / (high + low) };
    });
  });
  return ranges.sort((one, other) => one.off - other.off)[0];
}

/** Each try goes this much further. */
const FURTHER = 1.03;
const MOST_TRIES = 60;

/** Range of a dose over all sets, in usual doses: each set pushes an end only where it goes beyond the others. */
function doseRange(
  fitter: BoxFitter,
  cups: number,
  sets: readonly FoundSet[],
  suspect: number,
  cup: number,
): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, 0];
  const within = (): boolean => high - low > 2 * KNOWN_WITHIN * (high + low);
  for (const set of sets) {
    const columns = columnsOf(set.suspects, cups);
    const held = columns.findIndex((column) => column.suspect === suspect && column.cup === cup);
    low = Math.min(low, set.doses[held]!);
    high = Math.max(high, set.doses[held]!);
    for (const factor of [FURTHER, 1 / FURTHER]) {
      let doses = set.doses;
      for (let tries = 0; tries < MOST_TRIES; tries++) {
        const from = doses.slice();
        from[held] = (factor > 1 ? high : low) * factor;
        const fit = fitter.fit(columns, from, held);
        if (fit.outside > 0) break;
        doses = fit.doses;
        if (factor > 1) high = from[held]!;
        else low = from[held]!;
      }
    }
    // Wide enough to be of no use to anybody; how wide exactly is not asked.
    if (within()) break;
  }
  return [low, high];
}

/** What the attacker knows of a book: all of its shelf, and of the bait the mold, the plastic and the shares. The worst that can be. */
export function knowledgeOf(book: Book, id: string): Knowledge {
  const recipe = book.recipes.find((each) => each.id === id)!;
  const material = (name: string): Material => book.materials.find((each) => each.id === name)!;
  return {
    materials: book.materials,
    mold: book.molds.find((mold) => mold.id === recipe.mold)!,
    plastic: material(recipe.cups[0]!.plastics[0]!.material),
    shares: recipe.cups.map(({ share }) => share),
    optics: book.optics,
  };
}
