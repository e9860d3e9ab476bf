import { type Html, html } from '../../render/html.ts';
import type { MeasuringData } from '../../render/measuring-data.ts';
import { redraw } from '../match/redraw.ts';
import { cameraName, rememberCamera } from './camera-name.ts';
import { type CardPhotosShown, cardPhotosView, photosSay } from './card-photos-view.ts';
import type { BaitLine } from './measure-request.ts';
import type { Measurer } from './measurer.ts';
import { drawPicture } from './outlined-picture.ts';
import { baitOf, begunLine, isRead, type MeasuredBait, type TakenPhoto } from './taken-photo.ts';

/** How far an arrow key moves an end of a line, part of the photo's longer side; ten times as far with Shift. */
const STEP = 0.005;
/** A finger that moves no farther than this has touched, and drawn nothing: CSS pixels. */
const TOUCH = 8;

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** How photos are taken somewhere. */
export interface CardPhotosOptions extends Pick<CardPhotosShown, 'lines' | 'wanted'> {
  /** Told whenever something else is known. */
  readonly onChange?: (photos: readonly TakenPhoto[]) => void;
  /** Whether nothing is shown of photos until all are measured. */
  readonly waitsForAll?: () => boolean;
  /** Asked to take a colour of a photo without a card by touch. */
  readonly touchInstead: (photo: File) => void;
}

/** The parts of a page that photos of one bait are taken, measured and shown in. */
export function cardPhotosParts(): Html {
  return html`<p class="photo-buttons"><button type="button" data-take>Take or choose photos</button> <button class="quiet" type="button" data-other-bait hidden>Another bait</button></p>
<p class="photo-says" role="status" data-photos-say></p>
<input type="file" accept="image/jpeg,image/png,image/webp" multiple aria-label="Photos of the bait on the measuring card" data-card-photos hidden>
<div data-photos></div>`;
}

/** Photos of one bait on the measuring card: taken, measured one by one, and averaged. */
export class CardPhotos {
  private wanted: number;
  private readonly root: HTMLElement;
  private readonly data: MeasuringData;
  private readonly measurer: Measurer;
  private readonly options: CardPhotosOptions;
  private photos: readonly TakenPhoto[] = [];
  /** Where a finger went down. */
  private from: { readonly at: number; readonly x: number; readonly y: number } | undefined;

  /** @param root what has `cardPhotosParts` in it */
  constructor(root: HTMLElement, data: MeasuringData, measurer: Measurer, options: CardPhotosOptions) {
    this.root = root;
    this.data = data;
    this.measurer = measurer;
    this.options = options;
    this.wanted = options.wanted;
    const file = this.part<HTMLInputElement>('[data-card-photos]');
    file.addEventListener('change', () => {
      const chosen = [...(file.files ?? [])];
      file.value = '';
      this.add(chosen);
    });
    root.addEventListener('click', (event) => {
      const button = (event.target as Element).closest('button');
      if (button) this.onClick(button);
    });
    root.addEventListener('change', (event) => this.onChange(event.target as HTMLInputElement));
    root.addEventListener('keydown', (event) => this.onKey(event));
    for (const [type, run] of [
      ['pointerdown', this.down],
      ['pointermove', this.move],
      ['pointerup', this.up],
    ] as const)
      root.addEventListener(type, (event) => run.call(this, event));
    this.show();
  }

  /** What the photos came to; undefined where none could be measured, or one still is. */
  get measured(): MeasuredBait | undefined {
    return this.photos.some(({ answer }) => answer === undefined) ? undefined : baitOf(this.photos);
  }

  /** Opens the device's own chooser: only from a click. */
  choose(): void {
    this.part('[data-card-photos]').click();
  }

  /** Begins with another bait. */
  begin(wanted = this.wanted): void {
    this.wanted = wanted;
    this.photos = [];
    this.show();
  }

  add(files: readonly File[]): void {
    for (const file of files) {
      const at = this.photos.length;
      this.photos = [...this.photos, { file }];
      void this.measure(at);
    }
    this.show();
  }

  private part<T extends HTMLElement>(selector: string): T {
    return this.root.querySelector<T>(selector)!;
  }

  private change(at: number, photo: TakenPhoto): void {
    this.photos = this.photos.map((each, index) => (index === at ? photo : each));
    this.show();
  }

  private async measure(at: number, line?: BaitLine): Promise<void> {
    const { file } = this.photos[at]!;
    const waiting: TakenPhoto = line === undefined ? { file } : { file, line };
    this.change(at, waiting);
    const answer = await this.measurer
      .ask({ photo: file, card: this.data.card, ...(line && { line }) })
      .catch((): TakenPhoto['answer'] => ({ kind: 'failed' }));
    // It may have been left out meanwhile.
    const now = this.photos.indexOf(waiting);
    if (now >= 0 && answer !== undefined) this.change(now, { ...waiting, answer });
  }

  /** Shows what there is, anew. */
  show(): void {
    const { photos, wanted, data, options } = this;
    const { units } = data;
    const isWaiting = photos.some(({ answer }) => answer === undefined) && options.waitsForAll?.() === true;
    const shown = isWaiting ? photos.map(({ file }) => ({ file })) : photos;
    redraw(
      this.part('[data-photos]'),
      cardPhotosView({ photos: shown, units, wanted, camera: cameraName(), lines: options.lines }),
    );
    for (const [at, { answer, drawing }] of (shown as readonly TakenPhoto[]).entries())
      if (isRead(answer)) drawPicture(this.part<HTMLCanvasElement>(`[data-picture="${at}"]`), answer, drawing?.line);
    this.part('[data-take]').textContent = photos.length === 0 ? 'Take or choose photos' : 'Add another photo';
    this.part('[data-other-bait]').hidden = photos.length === 0;
    this.part('[data-photos-say]').textContent = photosSay({ photos, wanted });
    options.onChange?.(photos);
  }

  private onClick(button: HTMLButtonElement): void {
    const { dataset } = button;
    if (dataset.take !== undefined) this.choose();
    else if (dataset.otherBait !== undefined) {
      this.begin();
      this.part('[data-take]').focus();
    } else if (dataset.leaveOut !== undefined) {
      this.photos = this.photos.filter((_, at) => at !== Number(dataset.leaveOut));
      this.show();
      this.part('[data-take]').focus();
    } else if (dataset.again !== undefined) void this.measure(Number(dataset.again));
    else if (dataset.touchColour !== undefined)
      this.options.touchInstead(this.photos[Number(dataset.touchColour)]!.file);
    else if (dataset.drawLine !== undefined) this.drawLine(Number(dataset.drawLine));
    else if (dataset.noLine !== undefined) this.endLine(Number(dataset.noLine));
    else if (dataset.along !== undefined) {
      const at = Number(dataset.along);
      const { drawing } = this.photos[at]!;
      void this.measure(at, drawing!.line);
      this.part('[data-take]').focus();
    } else if (dataset.copyLines !== undefined) void this.copy(dataset.copyLines);
  }

  private onChange(control: HTMLInputElement): void {
    if (control.matches('[data-camera]')) {
      rememberCamera(control.value);
      this.show();
    } else if (control.matches('[data-line-end]')) {
      const at = photoOf(control);
      const photo = this.photos[at]!;
      this.change(at, { ...photo, drawing: { ...photo.drawing!, end: Number(control.value) as 0 | 1 } });
    }
  }

  private drawLine(at: number): void {
    const photo = this.photos[at]!;
    if (!isRead(photo.answer)) return;
    this.change(at, { ...photo, drawing: { line: begunLine(photo.answer, photo.line), end: 0 } });
    this.part(`[data-picture="${at}"]`).focus();
  }

  private endLine(at: number): void {
    const { drawing: _, ...photo } = this.photos[at]!;
    this.change(at, photo);
    this.part(`#line-of-${at}`).focus();
  }

  private onKey(event: KeyboardEvent): void {
    const by = ARROWS[event.key];
    const canvas = event.target as HTMLElement;
    if (by === undefined || canvas.dataset.picture === undefined) return;
    const at = Number(canvas.dataset.picture);
    const { answer, drawing } = this.photos[at]!;
    if (drawing === undefined || !isRead(answer)) return;
    event.preventDefault();
    const far = STEP * (event.shiftKey ? 10 : 1) * Math.max(answer.width, answer.height);
    const { x, y } = drawing.line[drawing.end];
    this.put(at, drawing.end, { x: x + by[0] * far, y: y + by[1] * far });
  }

  private put(at: number, end: 0 | 1, { x, y }: BaitLine[0]): void {
    const photo = this.photos[at]!;
    const { drawing } = photo;
    if (drawing === undefined || !isRead(photo.answer)) return;
    const { width, height } = photo.answer;
    const place = { x: Math.min(width, Math.max(0, x)), y: Math.min(height, Math.max(0, y)) };
    const [one, other] = drawing.line;
    this.photos = this.photos.map((each, index) =>
      index === at ? { ...photo, drawing: { ...drawing, line: end === 0 ? [place, other] : [one, place] } } : each,
    );
    drawPicture(this.part<HTMLCanvasElement>(`[data-picture="${at}"]`), photo.answer, this.photos[at]!.drawing!.line);
  }

  private placeOf(event: PointerEvent): { readonly at: number; readonly place: BaitLine[0] } | undefined {
    const canvas = (event.target as Element).closest<HTMLElement>('[data-picture]');
    if (!canvas) return undefined;
    const at = Number(canvas.dataset.picture);
    const { answer, drawing } = this.photos[at]!;
    if (drawing === undefined || !isRead(answer)) return undefined;
    const { left, top, width, height } = canvas.getBoundingClientRect();
    const place = {
      x: ((event.clientX - left) / width) * answer.width,
      y: ((event.clientY - top) / height) * answer.height,
    };
    return { at, place };
  }

  private down(event: PointerEvent): void {
    const touched = this.placeOf(event);
    this.from = touched && { at: touched.at, x: event.clientX, y: event.clientY };
    if (touched) this.put(touched.at, this.photos[touched.at]!.drawing!.end, touched.place);
  }

  /** A finger that is drawn over the photo takes the other end with it. */
  private move(event: PointerEvent): void {
    const touched = this.placeOf(event);
    if (!touched || !this.isDrawn(event) || event.buttons === 0) return;
    const { end } = this.photos[touched.at]!.drawing!;
    this.put(touched.at, end === 0 ? 1 : 0, touched.place);
  }

  private up(event: PointerEvent): void {
    const { from } = this;
    this.from = undefined;
    const photo = from && this.photos[from.at];
    if (!from || !photo?.drawing) return;
    const drawn = Math.hypot(event.clientX - from.x, event.clientY - from.y) > TOUCH;
    // After a touch the next one is for the other end.
    const end = drawn ? photo.drawing.end : photo.drawing.end === 0 ? 1 : 0;
    this.change(from.at, { ...photo, drawing: { ...photo.drawing, end } });
  }

  private isDrawn(event: PointerEvent): boolean {
    return this.from !== undefined && Math.hypot(event.clientX - this.from.x, event.clientY - this.from.y) > TOUCH;
  }

  private async copy(name: string): Promise<void> {
    const lines = this.part(`[data-lines="${name}"]`);
    const says = this.part('[data-photos-say]');
    try {
      await navigator.clipboard.writeText(`${lines.textContent}\n`);
      says.textContent = 'The lines are copied.';
    } catch {
      // Without leave for the clipboard the text is marked, to be copied by hand.
      window.getSelection()?.selectAllChildren(lines);
      says.textContent = 'The lines are selected: copy them by hand.';
    }
  }
}

function photoOf(control: HTMLElement): number {
  return Number(control.closest<HTMLElement>('[data-photo]')!.dataset.photo);
}
