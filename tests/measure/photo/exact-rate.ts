/** Below and above an interval lies this part. */
const TAIL = 0.1;

/** The middle 80 % of a rate in percent, of which `hits` of `n` are known: the exact interval of C. Clopper and E. Pearson (1934). */
export function exactRate(hits: number, n: number): readonly [number, number] {
  const low = hits === 0 ? 0 : root((p) => 1 - atMost(hits - 1, n, p) < TAIL);
  const high = hits === n ? 1 : root((p) => atMost(hits, n, p) > TAIL);
  return [100 * low, 100 * high];
}

/** Chance of `k` hits or fewer out of `n`, each of chance `p` between 0 and 1. */
function atMost(k: number, n: number, p: number): number {
  let term = n * Math.log1p(-p);
  let sum = 0;
  for (let i = 0; i <= k; i++) {
    sum += Math.exp(term);
    term += Math.log((n - i) / (i + 1)) + Math.log(p / (1 - p));
  }
  return sum;
}

/** Where between 0 and 1 something that holds for less ceases to hold. */
function root(isBelow: (p: number) => boolean): number {
  let [from, to] = [0, 1];
  for (let step = 0; step < 40; step++) {
    const middle = (from + to) / 2;
    if (isBelow(middle)) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}
