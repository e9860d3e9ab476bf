import type { BatchCup } from '../../book/model.ts';
import { withoutScaleText } from '../../words/measured.ts';
import type { BatchNames } from '../batch-view.ts';
import { type Html, html } from '../html.ts';
import { pairApart } from './pair-apart.ts';

/** What rounding to the tools of the bench does to the colour of a batch, of the cup that it moves most: a row of *How far off*. The build and the page's planner both write it. */
export function roundingApart(cups: readonly BatchCup[], names: Pick<BatchNames, 'cup'>): Html {
  const measured = cups.filter(({ amounts }) => amounts.length > 0);
  const [first] = measured;
  if (first === undefined) return html``;
  const most = measured.reduce((one, other) => (other.measuringDeltaE > one.measuringDeltaE ? other : one));
  const isWeighed = measured.every(({ amounts }) => amounts.every(({ tool }) => tool === 'scale'));
  const byHand = measured.flatMap(({ byHandDeltaE }) => byHandDeltaE ?? []);
  const of = measured.length > 1 ? ` of the ${most.name}` : '';
  return pairApart(
    isWeighed ? 'Scale to exact' : 'Spoons to exact',
    names.cup(most.name).hex,
    most.measuringDeltaE,
    `What rounding the amounts${of} ${isWeighed ? 'to what the scale shows' : 'to drops and spoons'} does to the colour of this batch.${byHand.length === 0 ? '' : ` ${withoutScaleText(Math.max(...byHand))}`}`,
  );
}
