import type { Material } from '../../book/model/shelf.ts';
import { defined } from '../../values/defined.ts';
import { type Html, html } from '../html.ts';
import { describedAs } from './described-as.ts';
import { flakePatterns, PX_PER_MM } from './flake-pattern.ts';
import { BLACK_CARD, WHITE_CARD } from './tint.ts';

/** Part of the card that the flake covers. */
const COVERED = 0.28;

/** Flake strewn on a white and a black card, at its true size. */
export function flakeCard(
  { id: seed, flake }: Pick<Material, 'id' | 'flake'>,
  options: { readonly id: string; readonly budget: number; readonly label: string },
): Html {
  if (flake === undefined) return html``;
  const { acrossMm, longMm, outline, finish, colour } = flake;
  const area = outline === 'strip' ? acrossMm * (longMm ?? acrossMm) : acrossMm ** 2;
  // In a layer of 1 mm: flakes a square mm that cover this part where they lie as they fall, some on others.
  const flakesPerMl = (-Math.log(1 - COVERED) * 1000) / area;
  const kind = {
    hex: colour,
    sizeMm: acrossMm,
    outline,
    finish,
    flakesPerMl,
    ...defined({ longMm }),
  };
  const { fills, definitions } = flakePatterns([kind], [{ thicknessMm: 1, contrastRatio: 0, flat: true }], {
    ...options,
    seed,
    scale: PX_PER_MM,
  });
  const flakes = fills.flat().map((fill) => html`<rect width="100%" height="100%" fill="${fill}"/>`);
  return html`<svg class="chips"${describedAs(options.label)} width="100%" height="100%"><defs>${definitions}</defs><rect width="100%" height="50%" fill="${WHITE_CARD}"/><rect y="50%" width="100%" height="50%" fill="${BLACK_CARD}"/>${flakes}</svg>`;
}
