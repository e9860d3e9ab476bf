import { relative, resolve } from 'node:path';
import { cardOfBook } from '../book/card-of-book.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import { SCALE_MM } from '../measuring-card/measuring-card.ts';
import { averagePhotos } from '../photo/average-photos.ts';
import type { CardValues } from '../photo/card-values.ts';
import { flakeFields, photoFields } from '../photo/photo-fields.ts';
import type { PhotoMeasured } from '../photo/photo-measured.ts';
import { USUAL_CAMERA } from '../photo/usual-camera.ts';
import { BOOK_FILE } from '../recipe/source.ts';
import { fieldsText } from '../recipe/write-front-matter.ts';
import { printable } from '../shell/printable.ts';
import { readBook } from '../shell/read-book.ts';
import type { VolumeUnit } from '../units/volume-text.ts';
import { defined } from '../values/defined.ts';
import { photoCardText, photoNoBookText } from '../words/photo-card.ts';
import {
  BOOK_IS_FAULTY,
  FIELDS_FOR_A_LOOK,
  FIELDS_OF_FLAKE,
  photoInShort,
  photoResultLines,
} from '../words/photo-result.ts';
import { counted } from '../words/sentence-text.ts';
import { certifyByChart } from './certify-by-chart.ts';
import type { Command, OptionValues, Surroundings } from './command.ts';
import { type PhotoTold, photoOfBait } from './photo-of-bait.ts';
import { baitLines, chartCorners } from './photo-places.ts';

/** More than an evening's photos of one bait. Convention of this book. */
const MOST_PHOTOS = 24;

/** A print of which nothing is known: as long as it says, on usual paper. */
const USUAL_PRINT: CardValues = { scaleMm: SCALE_MM };

/** `cupbook photo` */
export const photoCommand: Command = {
  name: 'photo',
  usage: 'PHOTO… [--camera NAME] [--bait PLACES] [--chart [--corners PLACES]]',
  summary: 'measure a bait in photos of it on the measuring card',
  words: [1, MOST_PHOTOS],
  options: {
    camera: { value: 'NAME', help: `what a file is to call the camera (default: ${USUAL_CAMERA})` },
    bait: { value: 'PLACES', help: 'where the bait is, if it can’t be found: "x,y x,y", a line along its belly' },
    chart: { help: 'measure the card itself, by a 24-patch colour chart beside it' },
    corners: {
      value: 'PLACES',
      help: 'where the chart is, if it can’t be found: "x,y x,y x,y x,y", its corner patches',
    },
    json: { help: 'as JSON, for other programs' },
  },
  details:
    'Several photos are taken to be of one bait, and averaged: three, with the card moved a little, tell more than one. A photo that is refused is\ntold of, and the others are measured all the same. Places are pixels from the left and from the top of the photo as it stands upright; with\nseveral photos --bait takes a line for each, with ; between them. What is known of your card stands in book.md. No photo is changed or sent.',
  refused: (line, sentence) => (line.includes('--json') ? JSON.stringify({ error: sentence }, null, 2) : undefined),
  async run(words, values, surroundings) {
    const card = cardFor(surroundings);
    return values.chart === true || values.corners !== undefined
      ? certify(words, values, { ...surroundings, card })
      : measure(words, values, { ...surroundings, card });
  },
};

/** What is known of the card, and what is said of that. */
interface KnownCard {
  readonly values: CardValues;
  /** Unset where nobody has measured it. */
  readonly scaleMm: number | undefined;
  readonly units: VolumeUnit;
  readonly says: string;
}

type With = Surroundings & { readonly card: KnownCard };

function cardFor({ from, recipes }: Surroundings): KnownCard {
  const { sources, diagnostics } = readBook(recipes);
  const { print, units, isThere, isFaulty } = cardOfBook(sources);
  const isUnread = diagnostics.some(({ file }) => file === BOOK_FILE);
  if (isFaulty || isUnread) console.error(BOOK_IS_FAULTY);
  const folder = relative(from, recipes) || '.';
  const says = isThere || isUnread ? photoCardText(print, `${folder}/${BOOK_FILE}`) : photoNoBookText(folder);
  return { values: print ?? USUAL_PRINT, scaleMm: print?.scaleMm, units, says };
}

async function measure(words: readonly string[], values: OptionValues, { from, card }: With): Promise<number> {
  const twice = words.find((file, at) => words.findIndex((other) => resolve(from, other) === resolve(from, file)) < at);
  if (twice !== undefined) throw new Refusal(`${twice} is named twice. Only another photo makes the mean surer.`);
  const lines = baitLines(values, words.length);
  const photos: PhotoTold[] = [];
  // One after the other: a photo takes some hundred megabytes while it is read.
  for (const [at, file] of words.entries())
    photos.push(await photoOfBait({ file, path: resolve(from, file) }, card.values, lines[at]));
  const found = photos.flatMap((photo) => ('measured' in photo ? [photo] : []));
  const bait = found.length === 0 ? undefined : averagePhotos(found.map(({ measured }) => measured));
  const told =
    bait && baitTold(bait, found.length, typeof values.camera === 'string' ? values.camera : USUAL_CAMERA, card);
  if (values.json) {
    const { says, values: known } = card;
    const certified = known.greys !== undefined;
    console.log(
      JSON.stringify(
        { card: { scaleMm: known.scaleMm, certified, says }, photos, ...defined({ bait: told }) },
        null,
        2,
      ),
    );
  } else {
    for (const photo of photos) if ('says' in photo) console.error(printable(`${photo.file}: ${photo.says}`));
    if (told) {
      const mean = bait?.warnings.includes('photos-differ') ? bait : undefined;
      const each = found.map(({ file, measured }) => `${file}: ${photoInShort(measured, mean)}`);
      const several = found.length === 1 ? [] : [...each, '', `The mean of ${counted(found.length, 'photo')}:`];
      console.log(printable([...several, ...told.says, '', told.text].join('\n')));
    }
  }
  return found.length === words.length ? 0 : 1;
}

/** A bait in words, and as a file has it. */
function baitTold(bait: PhotoMeasured, photos: number, camera: string, { units, says }: KnownCard) {
  const { overWhite, overBlack, contrast, doubt, flakes, noFlake, widthMm, warnings } = bait;
  const fields = photoFields(bait, camera);
  const flake = flakeFields(bait);
  const text = [
    `${FIELDS_FOR_A_LOOK}\n${fieldsText({ ...fields })}`,
    ...(flake ? [`${FIELDS_OF_FLAKE}\n${fieldsText({ flake: flake.map((each) => ({ ...each })) })}`] : []),
  ].join('\n\n');
  return {
    ...defined({ photos, overWhite, overBlack, contrast, doubt, flakes, noFlake, widthMm, warnings }),
    says: [...photoResultLines(bait, photos, units), says],
    fields,
    ...defined({ flake }),
    text,
  };
}

async function certify(words: readonly string[], values: OptionValues, { from, card }: With): Promise<number> {
  if (words.length > 1) throw new Refusal('--chart takes one photo: the one with the card and the chart in it.');
  if (values.bait !== undefined || values.camera !== undefined)
    throw new Refusal('--chart measures the card, and no bait: leave out --bait and --camera.');
  const told = await certifyByChart(resolve(from, words[0]!), { corners: chartCorners(values), scaleMm: card.scaleMm });
  console.log(values.json ? JSON.stringify(told, null, 2) : printable(`${told.says}\n\n${told.text}`));
  return 0;
}
