import type { Verdict } from './verdict.ts';

/**
 * Whether there is too much of something in a cup: it is too opaque, too vivid or too dark; or off in hue alone, which too much of one
 * material makes, too.
 */
export function isOvershot({ lightness, vividness, opacity }: Verdict): boolean {
  const off = [opacity, lightness, vividness].flatMap((part) => (part && part.size !== 'right' ? [part.towards] : []));
  return off.length === 0 || off.some((towards) => towards === 'opaque' || towards === 'dark' || towards === 'vivid');
}
