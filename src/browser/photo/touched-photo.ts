import { hexWords } from '../../words/colour.ts';
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

/** A photo without a measuring card: the bait is touched in it, and the white card if there is one. The last photo stays, since the next colour is often in the same one. */
export class TouchedPhoto {
  private readonly root: HTMLElement;
  private readonly canvas: HTMLCanvasElement;
  private spots: PhotoSpots | undefined;

  /** @param root what has the parts of it, see `photoView` */
  constructor(root: HTMLElement) {
    this.root = root;
    this.canvas = this.part<HTMLCanvasElement>('canvas');
    const file = this.part<HTMLInputElement>('[data-photo-file]');
    file.addEventListener('change', () => {
      const [photo] = file.files ?? [];
      file.value = '';
      if (photo) void this.read(photo);
    });
    this.part('[data-photo-other]').addEventListener('click', () => this.choose());
    root.addEventListener('change', () => this.show());
    this.canvas.addEventListener('pointerdown', (event) => this.touch(event));
    this.canvas.addEventListener('pointermove', (event) => {
      if (event.buttons > 0) this.touch(event);
    });
    this.canvas.addEventListener('keydown', (event) => this.step(event));
  }

  /** `#rrggbb` of the bait; undefined until it was touched. */
  get hex(): string | undefined {
    return this.spots?.hex;
  }

  get hasPhoto(): boolean {
    return this.spots !== undefined;
  }

  /** Begins with the next colour. */
  begin(): void {
    this.spots?.forget('bait');
    this.part<HTMLInputElement>('#photo-bait').checked = true;
    this.show();
  }

  /** Opens the device's own chooser: only from a click. */
  choose(): void {
    this.part('[data-photo-file]').click();
  }

  async read(photo: File, because = ''): Promise<void> {
    try {
      const image = await createImageBitmap(photo, { imageOrientation: 'from-image' });
      const scale = Math.min(1, MOST_PIXELS / Math.max(image.width, image.height));
      this.canvas.width = Math.max(1, Math.round(image.width * scale));
      this.canvas.height = Math.max(1, Math.round(image.height * scale));
      const { width, height } = this.canvas;
      const context = this.canvas.getContext('2d', { willReadFrequently: true })!;
      context.drawImage(image, 0, 0, width, height);
      image.close();
      this.spots = new PhotoSpots({ data: context.getImageData(0, 0, width, height).data, width, height });
      this.part<HTMLInputElement>('#photo-bait').checked = true;
      this.show(because);
      this.canvas.focus();
    } catch {
      this.show();
      this.say(`This browser can’t read ${photo.name} as a photo. Use a JPEG or a PNG.`);
    }
  }

  private part<T extends HTMLElement>(selector: string): T {
    return this.root.querySelector<T>(selector)!;
  }

  private get on(): SpotOn {
    return this.part<HTMLInputElement>('#photo-card').checked ? 'card' : 'bait';
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

  private show(because = ''): void {
    const { spots, on } = this;
    this.part('[data-photo-frame]').hidden = spots === undefined;
    for (const each of ['bait', 'card'] as const) this.showSpot(each);
    const hex = spots?.hex;
    this.part('[data-photo-swatch]').style.setProperty('background', hex ?? 'transparent');
    const byCard = spots?.place('card') === undefined ? '' : ', corrected by the white card';
    this.part('[data-photo-hex]').textContent =
      hex === undefined ? 'No colour yet' : `${hex}, ${hexWords(hex)}${byCard}`;
    this.part<HTMLButtonElement>('[data-photo-use]').disabled = hex === undefined;
    const next =
      spots === undefined
        ? 'Choose a photo of the bait.'
        : on === 'card'
          ? 'Tap the white card where the same light falls on it as on the bait.'
          : 'Tap the bait where the colour is even, away from shine and shadow.';
    this.say(because === '' ? next : `${because} ${next}`);
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
