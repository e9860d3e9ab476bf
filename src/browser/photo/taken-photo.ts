/**
 * Photos of one bait, as they come to be measured.
 *
 * @packageDocumentation
 */
import { averagePhotos } from '../../photo/average-photos.ts';
import type { PhotoMeasured } from '../../photo/photo-measured.ts';
import type { BaitLine, MeasureAnswer, ReadAnswer } from './measure-request.ts';

/** A photo that was taken or chosen. */
export interface TakenPhoto {
  readonly file: File;
  /** Unset while it is measured; `undefined` of a script that could not be loaded is a `failed`. */
  readonly answer?: MeasureAnswer | { readonly kind: 'failed' };
  /** Where its maker has said that the bait lies. */
  readonly line?: BaitLine;
  /** The line that is being drawn, and which of its ends a touch or an arrow key moves. */
  readonly drawing?: { readonly line: BaitLine; readonly end: 0 | 1 };
}

/** What photos of one bait came to. */
export interface MeasuredBait {
  readonly bait: PhotoMeasured;
  /** How many photos it is the mean of. */
  readonly photos: number;
}

/** Whether a photo could be read, whatever it shows. */
export function isRead(answer: TakenPhoto['answer']): answer is ReadAnswer {
  return answer?.kind === 'read';
}

/** Whether a photo shows no measuring card at all. */
export function hasNoCard({ answer }: TakenPhoto): boolean {
  return (
    isRead(answer) &&
    answer.found.kind === 'refused' &&
    answer.found.reason === 'too-few-marks' &&
    (answer.found.found ?? 0) === 0
  );
}

/** The bait of the photos that could be measured; undefined where none could. */
export function baitOf(photos: readonly TakenPhoto[]): MeasuredBait | undefined {
  const measured = photos.flatMap(({ answer }) =>
    isRead(answer) && answer.found.kind === 'measured' ? [answer.found] : [],
  );
  return measured.length === 0 ? undefined : { bait: averagePhotos(measured), photos: measured.length };
}

/** How far in from its edges the line begins that a maker is to move, part of a photo's width. */
const BEGUN = 0.3;

/** The line that a maker is given to be moved: where it was put last, else along the middle. */
export function begunLine({ width, height }: ReadAnswer, line?: BaitLine): BaitLine {
  const y = height / 2;
  return (
    line ?? [
      { x: BEGUN * width, y },
      { x: (1 - BEGUN) * width, y },
    ]
  );
}
