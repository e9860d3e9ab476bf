import { parseArgs } from 'node:util';

/** Photos of each set that are reported, and groups of three of one bait. */
const REPORTED: Readonly<Record<string, number>> = {
  b2: 70,
  a2: 30,
  ideal: 24,
  uneven: 24,
  mixed: 12,
  small: 30,
  dim: 30,
  defocused: 16,
  over: 10,
  dark: 6,
  bent: 16,
  twelve: 16,
  plain: 5,
  three: 10,
};

/** One photo, or three of one bait, that are to be measured. */
export interface Job {
  readonly set: string;
  readonly seed: number;
}

/** What the bench was asked for. */
export interface Asked {
  readonly jobs: readonly Job[];
  readonly label?: string;
}

/** Reads the arguments. Throws where one is unknown. Even seeds are reported, odd ones are there to tune by. */
export function readOptions(line: readonly string[]): Asked {
  const { values } = parseArgs({
    args: [...line],
    options: {
      photos: { type: 'string' },
      set: { type: 'string' },
      seed: { type: 'string' },
      from: { type: 'string' },
      tune: { type: 'boolean', default: false },
      report: { type: 'boolean', default: false },
      label: { type: 'string' },
    },
  });
  const sets = values.set?.split(',') ?? Object.keys(REPORTED);
  const first = Number(values.from ?? 2) + (values.tune ? 1 : 0);
  const jobs = sets.flatMap((set) => {
    const usual = REPORTED[set];
    if (usual === undefined) throw new RangeError(`no set ${set}; there are ${Object.keys(REPORTED).join(', ')}`);
    const count = Math.min(usual, Number(values.photos ?? usual));
    const seeds = values.seed?.split(',').map(Number) ?? Array.from({ length: count }, (_, at) => first + 2 * at);
    return seeds.map((seed, at) => ({ set, seed, at: at / count }));
  });
  // In turn from each set, so that a run that was broken off has some of all.
  jobs.sort((one, other) => one.at - other.at);
  return {
    jobs: values.report ? [] : jobs.map(({ set, seed }) => ({ set, seed })),
    ...(values.label === undefined ? {} : { label: values.label }),
  };
}
