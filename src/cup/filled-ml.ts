/** How far a cup is filled, ml: the part of it that leaves room for foam and splashes. */
export function filledMl({ cupMl, fill }: { readonly cupMl: number; readonly fill: number }): number {
  return cupMl * fill;
}
