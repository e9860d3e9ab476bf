import { type KeptRoom, keptRoom } from './kept-room.ts';

const KEY = 'cupbook-room';

/** The room check: once an evening, before the first cup is started. It keeps nobody from reading. */
export class RoomCheck {
  private readonly fold: HTMLDetailsElement;
  private readonly boxes: readonly HTMLInputElement[];
  private waiting: (() => void) | undefined;
  // Where the browser keeps nothing, the page remembers.
  private kept = '';

  constructor(fold: HTMLDetailsElement) {
    this.fold = fold;
    this.boxes = [...fold.querySelectorAll<HTMLInputElement>('input')];
    fold.addEventListener('change', () => this.keep({ ready: this.room.ready }));
    fold.querySelector('[data-room-ready]')!.addEventListener('click', () => this.pass());
    // Another evening may have come while the telephone slept.
    document.addEventListener('visibilitychange', () => this.show());
    this.show();
    // Who folds it together again does not want to start yet.
    fold.addEventListener('toggle', () => {
      if (!fold.open) this.ask(undefined);
    });
  }

  /** Does something at once where the room is ready; else asks for it first, and does it then. */
  before(start: () => void): void {
    if (this.room.ready) {
      start();
      return;
    }
    this.ask(start);
    this.fold.open = true;
    this.fold.querySelector('summary')!.focus();
    this.fold.scrollIntoView({ block: 'start' });
  }

  private pass(): void {
    for (const box of this.boxes) box.checked = true;
    this.keep({ ready: true });
    this.fold.open = false;
    this.fold.querySelector('summary')!.focus();
    const start = this.waiting;
    this.ask(undefined);
    start?.();
  }

  /** As long as something waits for the room, nothing else is on the page. */
  private ask(start: (() => void) | undefined): void {
    this.waiting = start;
    document.documentElement.toggleAttribute('data-asks-room', start !== undefined);
    this.show();
  }

  private get room(): KeptRoom {
    let text: string | null = this.kept;
    try {
      text = localStorage.getItem(KEY) ?? text;
    } catch {
      // What the page remembers will do.
    }
    return keptRoom(text, Date.now());
  }

  private keep({ ready }: Pick<KeptRoom, 'ready'>): void {
    const ticked = this.boxes.flatMap(({ checked, value }) => (checked ? [value] : []));
    const room: KeptRoom = { ticked, at: Date.now(), ready };
    this.kept = JSON.stringify(room);
    try {
      localStorage.setItem(KEY, this.kept);
    } catch {
      // It is asked again after a reload.
    }
    this.show();
  }

  private show(): void {
    const { ticked, ready } = this.room;
    for (const box of this.boxes) box.checked = ticked.includes(box.value);
    this.fold.toggleAttribute('data-ready', ready);
    this.fold.querySelector('[data-room-head]')!.textContent = ready
      ? 'The room is ready'
      : this.waiting
        ? 'First the room: is it ready?'
        : 'Before you heat: is the room ready?';
  }
}
