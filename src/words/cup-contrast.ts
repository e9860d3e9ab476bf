import type { Recipe } from '../book/model/recipe.ts';
import { PATTERNS, type Pattern } from '../patterns/patterns.ts';
import { differenceText } from './difference.ts';

/** How far the cups of a bait stand apart, and what that makes of a swirl and of a laminate. */
export function cupContrastText(pattern: Pattern, { deltaE, suits }: NonNullable<Recipe['contrast']>): string {
  const sizes = `The cups beside each other: ${differenceText(deltaE)}.`;
  const { beside, apart, faces } = PATTERNS[pattern];
  // Cups that lie each in its own part of the bait neither run into nor shine through one another.
  if ((beside && apart !== 'swirl') || faces.some((face) => face !== undefined && 'alone' in face)) return sizes;
  const swirl = suits.swirl ? 'A swirl of them shows its streaks' : 'A swirl of them would hardly show';
  const laminate = suits.laminate
    ? 'in a laminate each side tints the other'
    : 'in a laminate each side keeps its own colour';
  const cure = apart === 'swirl' && !suits.swirl ? ' Give the cups more contrast, or make one more solid.' : '';
  return `${sizes} ${swirl}; ${laminate}.${cure}`;
}
