/** What is kept of the room check, for every book of this browser: they are poured in one room. */
export interface KeptRoom {
  /** Ids of what was ticked. */
  readonly ticked: readonly string[];
  /** When something was ticked last, or the room was passed, ms as of `Date.now()`. */
  readonly at: number;
  readonly ready: boolean;
}

/** An evening at the bench is shorter than this: convention of this book. */
const EVENING_HOURS = 8;

const UNCHECKED: KeptRoom = { ticked: [], at: 0, ready: false };

/**
 * The room check of this evening; unchecked where what was kept is of another evening, or nothing that this program wrote.
 *
 * @param text what was kept
 * @param now ms, as of `Date.now()`
 *
 * @example keptRoom('{"ticked":[],"at":1000,"ready":true}', 2000).ready // true
 */
export function keptRoom(text: string | null, now: number): KeptRoom {
  let kept: unknown;
  try {
    kept = JSON.parse(text ?? 'null');
  } catch {
    return UNCHECKED;
  }
  if (typeof kept !== 'object' || kept === null) return UNCHECKED;
  const { ticked, at, ready } = kept as { readonly [Name in keyof KeptRoom]?: unknown };
  // A clock that was set back has kept something of the future.
  if (typeof at !== 'number' || !(at <= now) || now - at > EVENING_HOURS * 60 * 60 * 1000) return UNCHECKED;
  if (!Array.isArray(ticked) || typeof ready !== 'boolean') return UNCHECKED;
  return { ticked: ticked.filter((each) => typeof each === 'string'), at, ready };
}
