import type { StepWords } from '../patterns/pattern.ts';

/** A step's words alone, for where none can stand out. */
export function stepText(step: StepWords): string {
  return step.map((part) => (typeof part === 'string' ? part : part.cup)).join('');
}
