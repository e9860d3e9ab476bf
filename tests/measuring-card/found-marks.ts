import { createRequire } from 'node:module';
import type { Place } from '../../src/measuring-card/measuring-card.ts';

interface FoundMark {
  readonly id: number;
  readonly corners: readonly Place[];
  readonly hammingDistance: number;
}

interface Aruco {
  readonly AR: {
    readonly Detector: new (config: {
      dictionaryName: string;
    }) => { detectImage(width: number, height: number, data: Uint8ClampedArray): readonly FoundMark[] };
    readonly DICTIONARIES: Readonly<Record<string, { readonly codeList: readonly number[] }>>;
  };
}

const { AR } = createRequire(import.meta.url)('js-aruco2') as Aruco;

/** Name of the dictionary that the cards' marks are of. */
const DICTIONARY = 'ARUCO_MIP_36h12';

/** The codes of the dictionary as the library has it, by id. */
export const DICTIONARY_CODES: readonly number[] = AR.DICTIONARIES[DICTIONARY]!.codeList;

/** The marks that the library finds in a picture, by id; corners in pixels, the mark's own left top first, clockwise. */
export function foundMarks(picture: {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}): readonly FoundMark[] {
  const { width, height, data } = picture;
  const found = new AR.Detector({ dictionaryName: DICTIONARY }).detectImage(width, height, new Uint8ClampedArray(data));
  return [...found].sort((one, other) => one.id - other.id);
}
