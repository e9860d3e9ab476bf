import { deltaE00 } from '../../../src/optics/delta-e00.ts';
import { labFromLinear } from '../../../src/optics/display.ts';
import { photoDoubt } from '../../../src/photo/photo-doubt.ts';
import { type Tone, toneOf } from '../../../src/photo/tone/tone.ts';
import { NO_REFERENCE } from '../../photo/simulated/reference-spectra.ts';
import {
  type ChartPatch,
  cardBesideChart,
  chartAsCard,
  chartPatches,
  signalOf,
  WHITE,
} from '../../photo/tone/chart-photos.ts';
import { quantile } from '../foreign/report/statistics.ts';
import { exactRate } from './exact-rate.ts';

/** A patch as it was measured: how far off, its stated doubt, and whether it counts as a colour that was seen. */
interface Seen {
  readonly off: number;
  readonly bound: number;
  readonly isColour: boolean;
}

/** How much lighter or darker prints are that nobody has measured: exponents of what their greys throw back. */
const POWERS = [0.86, 1, 1.14];

/** What real photos of colour charts give: lines of text. What readers are told of accuracy is from here. */
export function realChartLines(): readonly string[] {
  if (NO_REFERENCE) return [`real charts: left out, ${NO_REFERENCE}`];
  const charts = ['a', 'b'].map((photo) => {
    const patches = chartPatches(photo);
    const { signals, values } = chartAsCard(patches);
    const unknown = POWERS.map((power) => seenBy(patches, toneOf(cardBesideChart(patches, power), { scaleMm: 80 })));
    return { photo, known: seenBy(patches, toneOf(signals, values)), unknown: unknown.flat() };
  });
  return [
    'real photos of colour charts, ΔE00: readers are told of these',
    ...charts.map(
      ({ photo, known, unknown }) =>
        `  ${photo}: known greys, mean of 24: ${mean(known).toFixed(2)} (to reach ≤ 4.2); greys that nobody has measured: ${mean(unknown).toFixed(2)}`,
    ),
    coloursLine(
      'known greys',
      charts.flatMap(({ known }) => known),
      ' (≤ 4.5)',
      ' (≤ 9.5)',
    ),
    coloursLine(
      'greys that nobody has measured, as wanted and 14 % lighter and darker',
      charts.flatMap(({ unknown }) => unknown),
    ),
  ];
}

/** Each patch by a tone. Light falls evenly on charts as they are given, and a patch is of one colour: those terms are none. */
function seenBy(patches: readonly ChartPatch[], tone: Tone): readonly Seen[] {
  return patches.map((patch, at) => {
    const signal = signalOf(patches, patch);
    const [lab, untoned, curved] = [tone.of(signal), tone.untoned(signal), tone.curved(signal)].map(labFromLinear);
    const views = [{ lab: lab!, untoned: untoned!, curved: curved!, spread: 0, clipped: 0 }];
    const { bound } = photoDoubt(views, {
      certified: tone.certified,
      paperKnown: tone.certified,
      fieldRms: 0,
      tintSpan: 0,
    });
    return { off: deltaE00(patch.lab, lab!), bound, isColour: at < WHITE && patch.unclipped };
  });
}

function coloursLine(says: string, seen: readonly Seen[], median = '', p90 = ''): string {
  const colours = seen.filter(({ isColour }) => isColour);
  const off = colours.map((each) => each.off);
  const within = colours.filter((each) => each.off <= each.bound).length;
  const share = ((100 * within) / colours.length).toFixed(0);
  const [from, to] = exactRate(within, colours.length);
  return `  unclipped colours of both, ${says}: median ${quantile(off, 0.5).toFixed(2)}${median}, p90 ${quantile(off, 0.9).toFixed(2)}${p90}; stated doubt (middle ${quantile(
    colours.map(({ bound }) => bound),
    0.5,
  ).toFixed(
    1,
  )}) covers ${share} % (85 to 95; 80 % of it ${from.toFixed(0)} to ${to.toFixed(0)}), ${colours.length} patches`;
}

function mean(seen: readonly Seen[]): number {
  return seen.reduce((sum, { off }) => sum + off, 0) / seen.length;
}
