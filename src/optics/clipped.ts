/**
 * Whether a channel of a screen's colour is at its end, so that nobody knows how far beyond it the thing itself was.
 *
 * @example isClipped('#00a0c0') // true
 */
export function isClipped(hex: string): boolean {
  return [1, 3, 5].some((at) => /^(?:00|ff)$/i.test(hex.slice(at, at + 2)));
}
