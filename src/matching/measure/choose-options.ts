/**
 * One option from each of some lists, so that all together cost least, where a cost takes long to work out and an estimate does not.
 *
 * @packageDocumentation
 */

/** An option from each list, by its place in it. */
export type Choice = readonly number[];

/** What is chosen by. */
export interface Choosing {
  /** Of each list, how many options it has: one at least. */
  readonly lengths: readonly number[];
  readonly cost: (choice: Choice) => number;
  /** A cheap estimate of the cost that is right near a choice; near where the lists come from, where none is given. */
  readonly estimateNear: (choice?: Choice) => (choice: Choice) => number;
}

// So many choices are worked out one and all; up to so many are estimated. Of those that are estimated so many are worked out, near where the
// lists come from and near the best of them.
const WORKED_OUT = 24;
const ESTIMATED = 3000;
const PROMISING = 14;
const LOOKS = 2;

/** The choice that costs least: all are tried where they are few, the most promising where they are more, else one and two at a time. */
export function chooseOptions({ lengths, cost, estimateNear }: Choosing): Choice {
  const count = lengths.reduce((product, length) => product * length, 1);
  if (count > ESTIMATED) return oneAndTwoAtATime(lengths, cost);
  const best = new Best(cost);
  const all = Array.from({ length: count }, (_, number) => numbered(number, lengths));
  if (count <= WORKED_OUT) {
    for (const choice of all) best.consider(choice);
    return best.choice!;
  }
  const tried = new Set<number>();
  for (let look = 0; look < LOOKS; look++) {
    const estimate = estimateNear(best.choice);
    const estimated = all.map((choice, number) => ({ number, by: estimate(choice) }));
    estimated.sort((one, other) => one.by - other.by || one.number - other.number);
    let worked = 0;
    for (const { number } of estimated) {
      if (worked === PROMISING) break;
      if (tried.has(number)) continue;
      tried.add(number);
      worked++;
      best.consider(all[number]!);
    }
  }
  return best.choice!;
}

class Best {
  choice: Choice | undefined;
  private least = Number.POSITIVE_INFINITY;
  private readonly cost: (choice: Choice) => number;

  constructor(cost: (choice: Choice) => number) {
    this.cost = cost;
  }

  /** Takes a choice that costs less; whether it does. */
  consider(choice: Choice): boolean {
    const cost = this.cost(choice);
    if (this.choice && !(cost < this.least - 1e-9)) return false;
    this.choice = choice;
    this.least = cost;
    return true;
  }
}

/** The choice with a number: the first list counts the ones. */
function numbered(number: number, lengths: readonly number[]): Choice {
  let rest = number;
  return lengths.map((length) => {
    const digit = rest % length;
    rest = Math.floor(rest / length);
    return digit;
  });
}

function oneAndTwoAtATime(lengths: readonly number[], cost: Choosing['cost']): Choice {
  const best = new Best(cost);
  best.consider(lengths.map(() => 0));
  for (let improved = true; improved; ) {
    improved = false;
    for (let i = 0; i < lengths.length; i++) {
      for (let k = i; k < lengths.length; k++) {
        for (let a = 0; a < lengths[i]!; a++) {
          for (let b = 0; b < (k === i ? 1 : lengths[k]!); b++) {
            const tried = [...best.choice!];
            tried[i] = a;
            if (k !== i) tried[k] = b;
            if (best.consider(tried)) improved = true;
          }
        }
      }
    }
  }
  return best.choice!;
}
