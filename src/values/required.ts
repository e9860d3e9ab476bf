/**
 * What stands under a key, or has an id, that is known to be there.
 *
 * Throws: RangeError if nothing does: whoever asks has not checked, which is a fault of this program and not of a book.
 *
 * @example required(new Map([['minnow', 3]]), 'minnow') // 3
 */
export function required<K, V>(things: ReadonlyMap<K, V | undefined>, key: K): V;
export function required<T extends { readonly id: string }>(things: readonly T[], id: string): T;
export function required(
  things: ReadonlyMap<unknown, unknown> | readonly { readonly id: string }[],
  key: unknown,
): unknown {
  const thing = 'get' in things ? things.get(key) : things.find(({ id }) => id === key);
  if (thing === undefined) throw new RangeError(`there is nothing named ${String(key)}: ask only for what is there`);
  return thing;
}
