/**
 * Colours from photos: the page *Photograph*, the dialog of other pages, and the worker in which both measure.
 *
 * @packageDocumentation
 */
import type { MeasuringData } from '../render/measuring-data.ts';
import { pageData } from './page-data.ts';
import { answerRequest } from './photo/answer-request.ts';
import type { MeasureRequest } from './photo/measure-request.ts';
import { type AskPhotos, PHOTOS_AS } from './photo/photo-answer.ts';
import { PhotoDialog } from './photo/photo-dialog.ts';
import { beginPhotograph } from './photo/photograph-page.ts';

if (typeof document === 'undefined') {
  self.addEventListener('message', ({ data }: MessageEvent<MeasureRequest>) => {
    void answerRequest(data).then(
      (answer) => self.postMessage(answer, { transfer: answer.kind === 'read' ? [answer.picture] : [] }),
      () => self.postMessage(undefined),
    );
  });
} else {
  const data = pageData<MeasuringData>('[data-measuring]')!;
  let shared: PhotoDialog | undefined;
  const dialog = (): PhotoDialog => {
    shared ??= new PhotoDialog(data);
    return shared;
  };
  (window as { [PHOTOS_AS]?: AskPhotos })[PHOTOS_AS] = (wanted, takes) => dialog().ask(wanted, takes);
  const part = document.querySelector<HTMLElement>('[data-photograph]');
  if (part) beginPhotograph(part, data, dialog);
}
