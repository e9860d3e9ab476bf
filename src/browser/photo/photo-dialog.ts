/**
 * Takes a colour from a photo: choose it, touch the bait, touch the white card if there is one. Nothing leaves the browser.
 *
 * @packageDocumentation
 */
import { photoView } from './photo-view.ts';
import { PhotoSpots, type Place, SPOT_RADIUS, type SpotOn } from './spots.ts';

/** Longest side that a photo is read with, pixels: enough for a spot, and little for a telephone. */
const MOST_PIXELS = 1200;
/** How far an arrow key moves a spot, part of a side; ten times as far with Shift. */
const STEP = 0.005;

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The dialog of a page. The last photo stays in it, since the next colour is often in the same one. */
class PhotoDialog {
  private readonly dialog: HTMLDialogElement;
  private readonly canvas: HTMLCanvasElement;
  private spots: PhotoSpots | undefined;
  private answer: ((hex: string | undefined) => void) | undefined;

  constructor() {
    this.dialog = document.createElement('dialog');
    this.dialog.className = 'photo-dialog';
    this.dialog.setAttribute('aria-labelledby', 'photo-head');
    this.dialog.innerHTML = photoView().toString();
    document.body.append(this.dialog);
    this.canvas = this.part<HTMLCanvasElement>('canvas');
    const file = this.part<HTMLInputElement>('[data-photo-file]');
    file.addEventListener('change', () => void this.read(file));
    this.dialog.addEventListener('close', () => this.give(undefined));
    this.part('[data-photo-other]').addEventListener('click', () => file.click());
    this.part('[data-photo-close]').addEventListener('click', () => this.dialog.close());
    this.part('[data-photo-use]').addEventListener('click', () => {
      this.give(this.spots?.hex);
      this.dialog.close();
    });
    this.dialog.addEventListener('change', () => this.show());
    this.canvas.addEventListener('pointerdown', (event) => this.touch(event));
    this.canvas.addEventListener('pointermove', (event) => {
      if (event.buttons > 0) this.touch(event);
    });
    this.canvas.addEventListener('keydown', (event) => this.step(event));
  }

  /** The colour that the reader takes; undefined if they leave without one. */
  ask(): Promise<string | undefined> {
    this.give(undefined);
    const answered = new Promise<string | undefined>((resolve) => {
      this.answer = resolve;
    });
    this.spots?.forget('bait');
    this.part<HTMLInputElement>('#photo-bait').checked = true;
    this.dialog.showModal();
    this.show();
    if (this.spots === undefined) this.part<HTMLInputElement>('[data-photo-file]').click();
    return answered;
  }

  private part<T extends HTMLElement>(selector: string): T {
    return this.dialog.querySelector<T>(selector)!;
  }

  private give(hex: string | undefined): void {
    this.answer?.(hex);
    this.answer = undefined;
  }

  private get on(): SpotOn {
    return this.part<HTMLInputElement>('#photo-card').checked ? 'card' : 'bait';
  }

  private async read(file: HTMLInputElement): Promise<void> {
    const [photo] = file.files ?? [];
    file.value = '';
    if (photo === undefined) return;
    try {
      const image = await createImageBitmap(photo);
      const scale = Math.min(1, MOST_PIXELS / Math.max(image.width, image.height));
      this.canvas.width = Math.max(1, Math.round(image.width * scale));
      this.canvas.height = Math.max(1, Math.round(image.height * scale));
      const { width, height } = this.canvas;
      const context = this.canvas.getContext('2d', { willReadFrequently: true })!;
      context.drawImage(image, 0, 0, width, height);
      image.close();
      this.spots = new PhotoSpots({ data: context.getImageData(0, 0, width, height).data, width, height });
      this.part<HTMLInputElement>('#photo-bait').checked = true;
      this.show();
      this.canvas.focus();
    } catch {
      this.show();
      this.say(`This browser can’t read ${photo.name} as a photo. Use a JPEG or a PNG.`);
    }
  }

  private touch(event: PointerEvent): void {
    const { left, top, width, height } = this.canvas.getBoundingClientRect();
    this.put({ x: (event.clientX - left) / width, y: (event.clientY - top) / height });
  }

  private step(event: KeyboardEvent): void {
    const by = ARROWS[event.key];
    if (by === undefined || this.spots === undefined) return;
    event.preventDefault();
    const { x, y } = this.spots.place(this.on) ?? { x: 0.5, y: 0.5 };
    const far = STEP * (event.shiftKey ? 10 : 1);
    this.put({ x: x + by[0] * far, y: y + by[1] * far });
  }

  private put(place: Place): void {
    this.spots?.put(this.on, place);
    this.show();
  }

  private say(text: string): void {
    this.part('[data-photo-says]').textContent = text;
  }

  private show(): void {
    const { spots, on } = this;
    this.part('[data-photo-frame]').hidden = spots === undefined;
    for (const each of ['bait', 'card'] as const) this.showSpot(each);
    const hex = spots?.hex;
    this.part('[data-photo-swatch]').style.setProperty('background', hex ?? 'transparent');
    const byCard = spots?.place('card') === undefined ? '' : ', corrected by the white card';
    this.part('[data-photo-hex]').textContent = hex === undefined ? 'No colour yet' : `${hex}${byCard}`;
    this.part<HTMLButtonElement>('[data-photo-use]').disabled = hex === undefined;
    this.say(
      spots === undefined
        ? 'Choose a photo of the bait.'
        : on === 'card'
          ? 'Tap the white card where the same light falls on it as on the bait.'
          : 'Tap the bait where the colour is even, away from shine and shadow.',
    );
  }

  private showSpot(on: SpotOn): void {
    const spot = this.part(`[data-spot="${on}"]`);
    const place = this.spots?.place(on);
    spot.hidden = place === undefined;
    if (place === undefined) return;
    const { width, height } = this.canvas;
    spot.style.setProperty('left', `${100 * place.x}%`);
    spot.style.setProperty('top', `${100 * place.y}%`);
    spot.style.setProperty('width', `${(200 * SPOT_RADIUS * Math.min(width, height)) / width}%`);
  }
}

let shared: PhotoDialog | undefined;

/** Asks the reader for a colour of a photo. Must be called from a click: a browser opens its chooser for nothing else. */
export function colourFromPhoto(): Promise<string | undefined> {
  shared ??= new PhotoDialog();
  return shared.ask();
}
