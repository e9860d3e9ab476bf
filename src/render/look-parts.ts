import type { Appearance, RecipeLook } from '../book/model.ts';

/** What is seen of a look-only recipe, and what it is called, the body first. */
export function lookParts({ pattern, body, thin, other }: RecipeLook): readonly { name: string; look: Appearance }[] {
  const second = pattern === 'tipped' ? 'tip' : pattern === 'swirl' ? 'streaks' : 'other side';
  return [
    { name: 'body', look: body },
    ...(other === undefined ? [] : [{ name: second, look: other }]),
    ...(thin === undefined ? [] : [{ name: 'thin part', look: thin }]),
  ];
}
