/** A size of flake as the bag has it. */
export function inches(mm: number): string {
  return `${(mm / 25.4).toFixed(3)} in`;
}
