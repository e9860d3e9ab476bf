import { frontMatterText, type WrittenFields } from '../../recipe/write-front-matter.ts';
import type { ChipStart } from './chip-start.ts';

/**
 * The whole file, with what was seen.
 *
 * @param made `2026-03-14`
 */
export function chipFileText({ title, mixed, thickness }: ChipStart, made: string, seen: WrittenFields): string {
  return frontMatterText({ title, made, ...mixed, seen: { ...seen, thickness } });
}
