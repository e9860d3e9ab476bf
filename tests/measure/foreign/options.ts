import { parseArgs } from 'node:util';
import { CONDITIONS, type Condition, conditionNamed, QUICK, REPORTED_FROM } from './conditions.ts';

/** A book that is to be kept. */
export interface Job {
  readonly condition: string;
  readonly seed: number;
  readonly recipes: number;
}

/** What the bench was asked for. */
export interface Asked {
  /** Books to keep, those that are there already among them. */
  readonly jobs: readonly Job[];
  /** One book in this process, for another one that waits. */
  readonly isOne: boolean;
  /** Results are kept under this name instead of that of the program's state. */
  readonly label?: string;
  readonly atOnce: number;
}

/** Reads the arguments. Throws where one is unknown. */
export function readOptions(line: readonly string[]): Asked {
  const { values } = parseArgs({
    args: [...line],
    options: {
      quick: { type: 'boolean', default: false },
      report: { type: 'boolean', default: false },
      condition: { type: 'string' },
      seed: { type: 'string' },
      books: { type: 'string' },
      recipes: { type: 'string' },
      label: { type: 'string' },
      jobs: { type: 'string', default: '2' },
      one: { type: 'boolean', default: false },
    },
  });
  const books = values.books ?? (values.quick ? String(QUICK.books) : undefined);
  const recipes = values.recipes ?? (values.quick ? String(QUICK.recipes) : undefined);
  const chosen =
    values.condition?.split(',').map(conditionNamed) ??
    (values.quick ? CONDITIONS.slice(0, 1) : CONDITIONS.filter(({ besides }) => !besides));
  const seedsOf = (condition: Condition): readonly number[] =>
    values.seed?.split(',').map(Number) ??
    Array.from({ length: Number(books ?? condition.books) }, (_, index) => REPORTED_FROM + index);
  const jobs = chosen.flatMap((condition) =>
    seedsOf(condition).map((seed) => ({
      condition: condition.name,
      seed,
      recipes: Math.min(condition.recipes, Number(recipes ?? condition.recipes)),
    })),
  );
  return {
    jobs: values.report ? [] : jobs,
    isOne: values.one,
    atOnce: Number(values.jobs),
    ...(values.label === undefined ? {} : { label: values.label }),
  };
}
