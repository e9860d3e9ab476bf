/**
 * Takes a colour from photos: of a bait on the measuring card, or of a bait anywhere by touch. Nothing leaves the browser.
 *
 * @packageDocumentation
 */
import type { MeasuringData } from '../../render/measuring-data.ts';
import { cameraName } from './camera-name.ts';
import { CardPhotos } from './card-photos.ts';
import { usedPhotosText } from './card-photos-view.ts';
import { Measurer } from './measurer.ts';
import type { PhotoAnswer, TakesPhotos } from './photo-answer.ts';
import { photoView } from './photo-view.ts';
import { hasNoCard, type MeasuredBait, type TakenPhoto } from './taken-photo.ts';
import { TouchedPhoto } from './touched-photo.ts';

const NO_CARD = 'There is no measuring card in this photo, so touch the colour.';

/** The dialog of a page. */
export class PhotoDialog {
  private readonly dialog: HTMLDialogElement;
  private readonly card: CardPhotos;
  private readonly touched: TouchedPhoto;
  /** As many photos are taken at once where nothing is doubtful of them; undefined: the reader takes them. */
  private atOnce: number | undefined;
  private answer: ((found: PhotoAnswer | undefined) => void) | undefined;

  constructor(data: MeasuringData) {
    this.dialog = document.createElement('dialog');
    this.dialog.className = 'photo-dialog';
    this.dialog.setAttribute('aria-labelledby', 'photo-head');
    this.dialog.innerHTML = photoView().toString();
    document.body.append(this.dialog);
    this.touched = new TouchedPhoto(this.part('[data-by-touch]'));
    this.card = new CardPhotos(this.part('[data-by-card]'), data, new Measurer(data.scripts.at(-1)!), {
      lines: () => [],
      wanted: 1,
      waitsForAll: () => this.atOnce !== undefined,
      onChange: (photos) => this.photosChanged(photos),
      touchInstead: (photo) => this.touchIn(photo),
    });
    this.dialog.addEventListener('close', () => this.give(undefined));
    for (const button of this.dialog.querySelectorAll('[data-photo-close]'))
      button.addEventListener('click', () => this.dialog.close());
    this.part('[data-photo-use]').addEventListener('click', () => {
      const { hex } = this.touched;
      this.take(hex === undefined ? undefined : { kind: 'touched', hex });
    });
    this.part('[data-use-measured]').addEventListener('click', () => {
      const { measured } = this.card;
      this.take(measured && { kind: 'measured', camera: cameraName(), ...measured });
    });
    this.part('[data-to-touch]').addEventListener('click', () => {
      this.showWay('touch');
      this.touched.begin();
      if (!this.touched.hasPhoto) this.touched.choose();
    });
    this.part('[data-to-card]').addEventListener('click', () => {
      this.showWay('card');
      this.card.begin();
      this.card.choose();
    });
  }

  /**
   * The colour that the reader takes; undefined if they leave without one. Must be called from a click: a browser opens its chooser for nothing
   * else.
   *
   * @param wanted how many photos are asked for
   * @param takes see `colourFromPhotos`
   */
  ask(wanted: number, takes?: TakesPhotos): Promise<PhotoAnswer | undefined> {
    const answered = this.open();
    this.atOnce = takes === 'at-once' ? wanted : undefined;
    this.card.begin(wanted);
    if (this.touched.hasPhoto) {
      this.showWay('touch');
      this.touched.begin();
    } else {
      this.showWay('card');
      this.card.choose();
    }
    return answered;
  }

  /** A colour that is touched in a photo that is there. */
  askIn(photo: File): Promise<PhotoAnswer | undefined> {
    const answered = this.open();
    this.touchIn(photo);
    return answered;
  }

  private open(): Promise<PhotoAnswer | undefined> {
    this.give(undefined);
    const answered = new Promise<PhotoAnswer | undefined>((resolve) => {
      this.answer = resolve;
    });
    this.dialog.showModal();
    return answered;
  }

  private part<T extends HTMLElement>(selector: string): T {
    return this.dialog.querySelector<T>(selector)!;
  }

  private take(found: PhotoAnswer | undefined): void {
    this.give(found);
    this.dialog.close();
  }

  private give(found: PhotoAnswer | undefined): void {
    this.answer?.(found);
    this.answer = undefined;
  }

  /** Whether as many as were asked for are measured, each of them, over both cards and without a warning. */
  private isCertain({ bait, photos }: MeasuredBait, taken: readonly TakenPhoto[]): boolean {
    const { atOnce = Number.POSITIVE_INFINITY } = this;
    const isWhole = bait.overWhite !== undefined && bait.overBlack !== undefined;
    return photos >= atOnce && photos === taken.length && isWhole && bait.warnings.length === 0;
  }

  private showWay(way: 'card' | 'touch'): void {
    this.part('[data-by-card]').hidden = way !== 'card';
    this.part('[data-by-touch]').hidden = way !== 'touch';
  }

  private touchIn(photo: File): void {
    this.showWay('touch');
    void this.touched.read(photo, NO_CARD);
  }

  private photosChanged(photos: readonly TakenPhoto[]): void {
    const use = this.part('[data-use-measured]');
    // The first time it is asked, the parts are still being made.
    const measured = (this.card as CardPhotos | undefined)?.measured;
    use.hidden = measured === undefined;
    if (measured) use.textContent = usedPhotosText(measured.photos);
    if (measured && this.isCertain(measured, photos)) {
      use.click();
      return;
    }
    const [only, ...others] = photos;
    if (!only || others.length > 0 || !hasNoCard(only)) return;
    this.touchIn(only.file);
    this.card.begin();
  }
}
