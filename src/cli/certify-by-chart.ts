import { type MeasuredPrint, writtenCardPrint } from '../book/written-card-print.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import type { Place } from '../measuring-card/measuring-card.ts';
import { readCard } from '../photo/card/read-card.ts';
import { type CardCertified, certifyCard } from '../photo/certify/certify-card.ts';
import { findChart } from '../photo/certify/find-chart.ts';
import type { Pixels } from '../photo/pixels.ts';
import { cardRefusal } from '../photo/refusals.ts';
import { fieldsText } from '../recipe/write-front-matter.ts';
import { defined } from '../values/defined.ts';
import { certifiedText, FIELDS_OF_A_CARD, LAY_A_RULER, notCertifiedText } from '../words/photo-certified.ts';
import { refusalText } from '../words/photo-refusal.ts';
import { pixelsOfFile } from './photo-file.ts';
import { scaled } from './photo-of-bait.ts';
import type { FourPlaces } from './photo-places.ts';

/** What a photo of a card beside a colour chart tells of the card. */
export interface CertifiedByChart {
  readonly says: string;
  /** The setting for `book.md`, as data and as text. */
  readonly fields: ReturnType<typeof writtenCardPrint>;
  readonly text: string;
  readonly certified: CardCertified;
}

/**
 * Measures a print of the card by a photo of it beside a colour chart.
 *
 * @param corners middles of the chart's corner patches, in the file's own pixels, where it isn't to be looked for
 * @param scaleMm how long the book says that the print's scale is
 * Throws: Refusal, with what to do, where the photo tells nothing.
 */
export async function certifyByChart(
  path: string,
  { corners, scaleMm }: { readonly corners: FourPlaces | undefined; readonly scaleMm: number | undefined },
): Promise<CertifiedByChart> {
  const pixels = await pixelsOfFile(path);
  if ('unreadable' in pixels) throw new Refusal(pixels.unreadable);
  const card = readCard(pixels);
  if (card.kind === 'refused') throw new Refusal(refusalText(card));
  const refused = cardRefusal(card);
  if (refused) throw new Refusal(refusalText(refused));
  const places = corners
    ? (corners.map((corner) => inside(scaled(corner, pixels.scale), pixels)) as unknown as FourPlaces)
    : findChart(pixels, card);
  const found = places ? certifyCard(pixels, card, places) : ({ kind: 'not-certified', reason: 'no-chart' } as const);
  if (found.kind === 'not-certified') throw new Refusal(notCertifiedText(found));
  const { paper, black, greys } = found;
  const print: MeasuredPrint = { paper, black, greys, ...defined({ scaleMm }) };
  const fields = writtenCardPrint(print);
  const says = [certifiedText(found), ...(scaleMm === undefined ? [LAY_A_RULER] : [])].join('\n');
  return { says, fields, text: `${FIELDS_OF_A_CARD}\n${fieldsText(fields)}`, certified: found };
}

function inside(place: Place, { width, height }: Pixels): Place {
  if (place.x < width && place.y < height) return place;
  throw new Refusal('A corner of --corners lies outside the photo, which is counted as it stands upright.');
}
