const INSTEAD = 'Set your phone to wait longer before its screen goes dark (in its display settings).';

/** Why the screen may go dark, and what to do. */
function notAwakeWords(isSecure: boolean): string {
  return isSecure
    ? `This browser can’t keep the screen on now. ${INSTEAD}`
    : `This page came over plain http, so the browser won’t keep the screen on. ${INSTEAD}`;
}

/** The screen kept on as long as the bench is open, where the browser allows it. */
export class KeptAwake {
  private readonly shows: HTMLElement;
  private readonly says: HTMLElement;
  private lock: WakeLockSentinel | undefined;
  private isWanted = false;

  /**
   * @param shows where it is shown in a few words whether the screen stays on
   * @param says where it is said what to do if not
   */
  constructor(shows: HTMLElement, says: HTMLElement) {
    this.shows = shows;
    this.says = says;
    // A browser lets go of it when another page is looked at.
    document.addEventListener('visibilitychange', () => {
      if (this.isWanted && document.visibilityState === 'visible') void this.ask();
    });
  }

  begin(): void {
    this.isWanted = true;
    void this.ask();
  }

  end(): void {
    this.isWanted = false;
    void this.lock?.release();
    this.lock = undefined;
  }

  private async ask(): Promise<void> {
    try {
      // Absent where a page came over plain http, whatever the types say.
      const lock = await navigator.wakeLock.request('screen');
      if (this.isWanted) this.lock = lock;
      else await lock.release();
      this.shows.textContent = 'Screen stays on';
      this.says.textContent = '';
    } catch {
      this.shows.textContent = 'Screen may go dark: see below';
      this.says.textContent = notAwakeWords(window.isSecureContext);
    }
  }
}
