import { slugOf } from '../../recipe/source.ts';

const LONGEST = 60;

/** A title as the name of a new file: plain letters and digits with hyphens between, and a number where that name is taken already. */
export function freeName(title: string, taken: ReadonlySet<string>): string {
  const name = slugOf(slugOf(title).slice(0, LONGEST)) || 'matched';
  let free = name;
  for (let number = 2; taken.has(free); number++) free = `${name}-${number}`;
  return free;
}
