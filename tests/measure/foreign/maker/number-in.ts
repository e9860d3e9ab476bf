/** A number somewhere in an answer that may not have it: undefined where it is not said. */
export function numberIn(answer: unknown, ...path: readonly string[]): number | undefined {
  const found = path.reduce<unknown>(
    (within, name) =>
      typeof within === 'object' && within !== null
        ? Object.entries(within).find(([key]) => key === name)?.[1]
        : undefined,
    answer,
  );
  return typeof found === 'number' && Number.isFinite(found) ? found : undefined;
}
