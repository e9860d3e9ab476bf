import type { FirstRecipe } from '../../../../src/matching/first-recipe.ts';
import type { NextAddition } from '../../../../src/matching/next-addition.ts';
import { targetFile } from '../book/log-text.ts';
import { lookFields } from '../book/look-fields.ts';
import type { SeenPair } from '../physics/eye.ts';
import { meanLook, noted } from '../world/eye-noise.ts';
import type { Bench } from './course.ts';
import { numberIn } from './number-in.ts';

type Looked = Pick<Bench, 'book' | 'condition' | 'camera' | 'chance'>;

/** What the book has a maker do who is told that photos of the target would tell more: three of them in all. */
const PHOTOS = 3;

/** A target as its maker has noted it: by one look, and by the mean of three photos once the book has said that those would tell more. */
export class NotedTarget {
  readonly id: string;
  readonly #bench: Looked;
  readonly #wanted: SeenPair;
  readonly #looks: SeenPair[] = [];

  /** Looks at it, and writes its file. */
  constructor(bench: Looked, id: string, wanted: SeenPair) {
    this.id = id;
    this.#bench = bench;
    this.#wanted = wanted;
    this.#note(1, bench.condition.doubt);
  }

  /** Does as the answer says of photos of the target; whether its file has changed by that. */
  looksMore({ advice }: Pick<NextAddition | FirstRecipe, 'advice'>): boolean {
    const doubt = numberIn(advice, 'ofThree');
    if (!this.#bench.condition.morePhotos || doubt === undefined || this.#looks.length === PHOTOS) return false;
    // As many digits as are told.
    this.#note(PHOTOS, Math.round(10 * doubt) / 10);
    return true;
  }

  #note(looks: number, doubt: number | undefined): void {
    const { book, condition, camera, chance } = this.#bench;
    while (this.#looks.length < looks) this.#looks.push(noted(this.#wanted, camera, chance));
    book.write(targetFile(this.id, lookFields(meanLook(this.#looks), { means: condition.means, doubt })));
  }
}
