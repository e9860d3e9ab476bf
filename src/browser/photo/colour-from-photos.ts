import type { MeasuringData } from '../../render/measuring-data.ts';
import { pageData } from '../page-data.ts';
import { type AskPhotos, PHOTOS_AS, type PhotoAnswer, type TakesPhotos } from './photo-answer.ts';

let loading: Promise<AskPhotos> | undefined;

/**
 * Asks the reader for a colour of photos; undefined if they leave without one. Must be called from a click: a browser opens its chooser for
 * nothing else. The script for it is loaded with the first.
 *
 * @param wanted how many photos are asked for
 * @param takes `at-once`: as many as are asked for are taken as soon as they are measured, if nothing is doubtful of them
 */
export async function colourFromPhotos(wanted = 1, takes?: TakesPhotos): Promise<PhotoAnswer | undefined> {
  loading ??= loaded();
  try {
    return (await loading)(wanted, takes) as Promise<PhotoAnswer | undefined>;
  } catch {
    loading = undefined;
    window.alert('This page couldn’t load what measures photos. Check the connection, and try again.');
    return undefined;
  }
}

async function loaded(): Promise<AskPhotos> {
  const { scripts } = pageData<MeasuringData>('[data-measuring]')!;
  const there = new Set([...document.scripts].map(({ src }) => src));
  for (const path of scripts) if (!there.has(new URL(path, document.baseURI).href)) await run(path);
  const ask = (window as { [PHOTOS_AS]?: AskPhotos })[PHOTOS_AS];
  if (!ask) throw new Error(`${scripts.at(-1)} did nothing`);
  return ask;
}

/** Loads a script and runs it. Rejects where it can’t be loaded; a script that was asked for in vain can be asked for again. */
function run(path: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const script = document.createElement('script');
    script.addEventListener('load', () => resolve());
    script.addEventListener('error', () => {
      script.remove();
      reject(new Error(`${path} can’t be loaded`));
    });
    script.src = path;
    document.head.append(script);
  });
}
