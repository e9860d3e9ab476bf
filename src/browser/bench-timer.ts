/**
 * The timer of the bench: it counts up, or down to a set time and on beyond it.
 *
 * @packageDocumentation
 */

/** A timer as it is kept over a reload: by the clock, so that no pause of the page stops it. */
export interface Timer {
  /** When it was started last, ms since the epoch; absent while it stands. */
  readonly since?: number;
  /** What had run before that, ms. */
  readonly before: number;
  /** After how many seconds it rings; 0: never. */
  readonly ringAfter: number;
}

/** What has run, ms. A clock that was set back takes nothing away. */
function ranMs({ since, before }: Timer, now: number): number {
  return before + (since === undefined ? 0 : Math.max(0, now - since));
}

/** Started where it stands, or stopped where it runs. */
export function turned(timer: Timer, now: number): Timer {
  const { ringAfter } = timer;
  return timer.since === undefined
    ? { since: now, before: timer.before, ringAfter }
    : { before: ranMs(timer, now), ringAfter };
}

/** Whether it has run for as long as it was set to. */
export function isUp(timer: Timer, now: number): boolean {
  return timer.ringAfter > 0 && ranMs(timer, now) >= timer.ringAfter * 1000;
}

/** `1:05`: what has run, or with a set time what is left; `+0:05` is beyond it. */
export function timerText(timer: Timer, now: number): string {
  const ran = ranMs(timer, now) / 1000;
  if (timer.ringAfter === 0) return clock(Math.floor(ran));
  return isUp(timer, now) ? `+${clock(Math.floor(ran - timer.ringAfter))}` : clock(Math.ceil(timer.ringAfter - ran));
}

function clock(seconds: number): string {
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

/** A timer from what a browser has kept; a new one for anything else. */
export function keptTimer(text: string | null): Timer {
  try {
    const { since, before, ringAfter } = JSON.parse(text ?? '') as Record<keyof Timer, unknown>;
    const isNumber = (value: unknown): value is number => Number.isFinite(value);
    if (isNumber(before) && isNumber(ringAfter) && (since === undefined || isNumber(since)))
      return { before, ringAfter, ...(since === undefined ? {} : { since }) };
  } catch {
    // Nothing was kept, or something else was.
  }
  return { before: 0, ringAfter: 0 };
}
