/**
 * The book's views of cups and baits: the optics' results as plain values of the model.
 *
 * @packageDocumentation
 */
import { type Appearance, appearance, type seen, swirlAppearance } from '../optics/appearance.ts';
import type { Body, Layer } from '../optics/stack.ts';
import { coreLayers, layersByShare } from '../optics/stack.ts';
import type { Look, Pattern, Seen } from './model.ts';

const round = (value: number, places: number): number => Number(value.toFixed(places));

/** A colour of the optics as the book keeps it: Lab to a hundredth. */
export function keptSeen({ lab, hex, mapped }: Pick<ReturnType<typeof seen>, 'lab' | 'hex' | 'mapped'>): Seen {
  return { lab: { L: round(lab.L, 2), a: round(lab.a, 2), b: round(lab.b, 2) }, hex, mapped };
}

/** An appearance as the book keeps it. */
export function keptLook({
  overWhite,
  overBlack,
  contrastRatio,
}: Pick<Appearance, 'overWhite' | 'overBlack' | 'contrastRatio'>): Look {
  return { overWhite: keptSeen(overWhite), overBlack: keptSeen(overBlack), contrastRatio: round(contrastRatio, 4) };
}

/** A body of a thickness in mm over the book's backings. */
export function lookOf(body: Body, thickness: number): Look {
  return keptLook(appearance([{ ...body, thickness }]));
}

/** The plastic of a cup without its flake. */
export function withoutFlake({ absorption, scattering }: Body): Body {
  return { absorption, scattering };
}

/** A cup's body and its share of the bait. */
export interface SharedCup {
  readonly body: Body;
  readonly share: number;
}

/** A bait as a whole at one thickness: the side looked at, and the other where there is one. */
export function baitLooks(
  pattern: Pattern,
  cups: readonly SharedCup[],
  thickness: number,
): { readonly side: Look; readonly other?: Look } {
  const shared = cups.map(({ body, share }) => ({ ...body, share }));
  const [first, second] = shared;
  if (first === undefined) throw new RangeError('a bait has no cup; give it one');
  const layersLook = (layers: readonly Layer[]): Look => keptLook(appearance(layers));
  switch (pattern) {
    case 'solid':
      return { side: lookOf(first, thickness) };
    case 'laminate':
    case 'layered':
      return {
        side: layersLook(layersByShare(shared, thickness)),
        other: layersLook(layersByShare(shared.toReversed(), thickness)),
      };
    case 'core':
      return second === undefined
        ? { side: lookOf(first, thickness) }
        : { side: layersLook(coreLayers(first, second, thickness)), other: lookOf(second, thickness) };
    case 'swirl':
      return { side: keptLook(swirlAppearance(shared, { thickness })) };
    case 'tipped':
      return { side: lookOf(first, thickness), ...(second === undefined ? {} : { other: lookOf(second, thickness) }) };
  }
}
