import { isUp, keptTimer, type Timer, timerText, turned } from './bench-timer.ts';

/** Where the timer is shown and handled. */
export interface ClockParts {
  readonly time: HTMLElement;
  readonly ring: HTMLSelectElement;
  readonly run: HTMLButtonElement;
  readonly zero: HTMLButtonElement;
  /** Says when the time is up. */
  readonly up: HTMLElement;
}

/** Where it is kept over a reload. */
interface ClockKeeper {
  read(key: string): string | null;
  write(key: string, text: string): void;
}

/** Times after which the timer rings, s: from a turn in a microwave to a rest. Convention of this book. */
const RING_AFTER = [15, 30, 45, 60, 90, 120, 180, 300, 600, 900, 1800] as const;

const ringText = (seconds: number): string =>
  `Ring ${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;

// Of the whole book: there is one bench.
const KEY = 'cupbook bench timer';
const BEEPS = [0, 0.45, 0.9] as const;
const BEEP_S = 0.25;
const BEEP_HZ = 880;
const TREMBLES_MS = [300, 150, 300, 150, 300] as const;

/** The timer of the bench. It sounds only after a tap on Start, since no browser lets a page sound by itself. */
export class BenchClock {
  private readonly parts: ClockParts;
  private readonly keeper: ClockKeeper;
  private timer: Timer;
  private hasRung: boolean;
  private sound: AudioContext | undefined;
  private beat: number | undefined;

  constructor(parts: ClockParts, keeper: ClockKeeper) {
    this.parts = parts;
    this.keeper = keeper;
    this.timer = keptTimer(keeper.read(KEY));
    this.hasRung = isUp(this.timer, Date.now());
  }

  begin(): void {
    const { ring, run, zero } = this.parts;
    ring.append(...RING_AFTER.map((seconds) => new Option(ringText(seconds), String(seconds))));
    ring.value = String(this.timer.ringAfter);
    run.addEventListener('click', () => {
      this.wakeSound();
      this.set(turned(this.timer, Date.now()));
    });
    zero.addEventListener('click', () => this.set({ before: 0, ringAfter: this.timer.ringAfter }));
    ring.addEventListener('change', () => this.set({ ...this.timer, ringAfter: Number(ring.value) }));
    this.show();
  }

  private set(timer: Timer): void {
    this.timer = timer;
    this.hasRung = isUp(timer, Date.now());
    this.keeper.write(KEY, JSON.stringify(timer));
    this.show();
  }

  private show(): void {
    const { time, run, up } = this.parts;
    const now = Date.now();
    const runs = this.timer.since !== undefined;
    time.textContent = timerText(this.timer, now);
    run.textContent = runs ? 'Stop' : 'Start';
    const isOver = isUp(this.timer, now);
    const words = isOver ? 'Time’s up.' : '';
    if (up.textContent !== words) up.textContent = words;
    if (isOver && !this.hasRung) this.ring();
    this.hasRung = isOver;
    window.clearTimeout(this.beat);
    if (runs) this.beat = window.setTimeout(() => this.show(), 200);
  }

  private wakeSound(): void {
    try {
      this.sound ??= new AudioContext();
      void this.sound.resume();
    } catch {
      // A browser without sound shows that the time is up.
    }
  }

  private ring(): void {
    const { sound } = this;
    // Without a tap since the page was loaded a browser allows neither.
    if (sound === undefined) return;
    navigator.vibrate?.([...TREMBLES_MS]);
    for (const after of BEEPS) {
      const tone = sound.createOscillator();
      tone.frequency.value = BEEP_HZ;
      tone.connect(sound.destination);
      tone.start(sound.currentTime + after);
      tone.stop(sound.currentTime + after + BEEP_S);
    }
  }
}
