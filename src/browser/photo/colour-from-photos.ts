import type { MeasuringData } from '../../render/measuring-data.ts';
import { pageData } from '../page-data.ts';
import { type AskPhotos, PHOTOS_AS, type PhotoAnswer } from './photo-answer.ts';

let loading: Promise<AskPhotos> | undefined;

/**
 * Asks the reader for a colour of photos; undefined if they leave without one. Must be called from a click: a browser opens its chooser for
 * nothing else. The script for it is loaded with the first.
 *
 * @param wanted how many photos are asked for
 */
export async function colourFromPhotos(wanted = 1): Promise<PhotoAnswer | undefined> {
  loading ??= loaded();
  try {
    return (await loading)(wanted) as Promise<PhotoAnswer | undefined>;
  } catch {
    loading = undefined;
    window.alert('This page couldn’t load what measures photos. Check the connection, and try again.');
    return undefined;
  }
}

function loaded(): Promise<AskPhotos> {
  const { script: path } = pageData<MeasuringData>('[data-measuring]')!;
  return new Promise((resolve, reject) => {
    const script = document.createElement('script');
    const settle = (): void => {
      script.remove();
      const ask = (window as { [PHOTOS_AS]?: AskPhotos })[PHOTOS_AS];
      if (ask) resolve(ask);
      else reject(new Error(`${path} can’t be loaded`));
    };
    script.addEventListener('load', settle);
    script.addEventListener('error', settle);
    script.src = path;
    document.head.append(script);
  });
}
