import { freeName } from '../../book/read/free-name.ts';

/** What was typed, as the name of a cup: a number alone would come first of all cups where a recipe's file is read, wherever it stands. */
export function cupName(typed: string, others: ReadonlySet<string>): string {
  const name = freeName(typed, others);
  return /^\d+$/.test(name) ? freeName(`cup ${name}`, others) : name;
}
