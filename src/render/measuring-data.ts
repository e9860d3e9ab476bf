import type { CardPrint } from '../book/model/card-print.ts';
import type { VolumeUnit } from '../units/volume-text.ts';
import { embeddedJson, type Html, html } from './html.ts';
import { link } from './links.ts';
import type { PageContext } from './page.ts';

/** What a page needs to measure photos. */
export interface MeasuringData {
  /** Where the scripts are that do it, from the page, in the order in which they must run: loaded when a photo is chosen, since they are the largest part. */
  readonly scripts: readonly string[];
  readonly card: CardPrint;
  readonly units: VolumeUnit;
}

/** A print of which nothing is known: as long as it says, on usual paper. */
const USUAL_PRINT: CardPrint = { scaleMm: 80 };

/** The same as part of a page. */
export function measuringData(context: PageContext): Html {
  const { book, assets } = context;
  const data: MeasuringData = {
    scripts: assets.scripts.photograph.map((path) => link(context, path)),
    card: book.measuringCard ?? USUAL_PRINT,
    units: { volume: book.settings.volume },
  };
  return html`<script type="application/json" data-measuring>${embeddedJson(data)}</script>`;
}
