import type { PlasticCurve } from '../../book/method/method-examples.ts';
import type { Book } from '../../book/model.ts';
import { CLEAR_SHORTENING } from '../../tables/light-path.ts';
import { LADDER_MM } from '../../tables/material-defaults.ts';
import { type Html, html } from '../html.ts';
import { fixed } from '../spectrum-graph.ts';
import { type LightWalk, lightWalk } from './light-walk.ts';

const WIDTH = 330;
const PANEL = 150;
const TOP = 34;
const DEPTH = 110;
const CARD = 10;
const MM = DEPTH / LADDER_MM;
/** A ray is drawn that turns about so often: enough to be seen, and few enough to be followed. */
const TURNS = 9;

/** How light goes through clear plastic and through cloudy, each with a ray that was followed. */
export function lightPathPicture(scatterer: PlasticCurve, { path }: Book['optics']): Html {
  const sorted = [...scatterer.scattering].sort((one, other) => one - other);
  const [clear, cloudy] = [
    lightWalk(0, LADDER_MM, 0),
    lightWalk(sorted[Math.floor(sorted.length / 2)]!, LADDER_MM, TURNS),
  ];
  const { title } = scatterer.material;
  const description = `Clear: straight down to the card and straight back, ${clear.wayMm.toFixed(0)} mm. With ${title}: turned ${cloudy.turns} times, ${cloudy.wayMm.toFixed(0)} mm before it is out.`;
  return html`<figure class="method-figure"><svg class="graph" role="img" aria-labelledby="path-title path-desc" viewBox="0 0 ${WIDTH} ${TOP + DEPTH + CARD + 22}" width="${WIDTH}" height="${TOP + DEPTH + CARD + 22}"><title id="path-title">A ray in clear plastic and one in cloudy plastic</title><desc id="path-desc">${description}</desc>
${panel(0, 'clear', clear)}${panel(WIDTH - PANEL, `with ${title}`, cloudy)}</svg><figcaption>${LADDER_MM} mm of plastic on a card. Left, clear: light goes down and straight back, ${clear.wayMm.toFixed(0)} mm in all. Right, with the usual dose of ${title}: this ray was turned ${cloudy.turns} times and travelled ${cloudy.wayMm.toFixed(0)} mm. So a drop of dye takes ${percent(path.d)} less out of the light in clear plastic. The book started from ${percent(CLEAR_SHORTENING)}, and learns this too.</figcaption></figure>`;
}

function panel(left: number, name: string, { corners }: LightWalk): Html {
  const middle = left + PANEL / 2;
  const at = ([across, down]: readonly [number, number]): string =>
    `${fixed(middle + across * MM)},${fixed(TOP + down * MM)}`;
  const last = corners.at(-1)!;
  // In clear plastic a ray comes out where it went in: the way back is drawn beside the way there.
  const beside = corners.length === 3 ? 8 : 0;
  const points = [
    `${fixed(middle - beside)},${TOP - 20}`,
    ...corners.map(([across, down], corner) =>
      at([across + ((corner === corners.length - 1 ? 1 : corner === 0 ? -1 : 0) * beside) / MM, down]),
    ),
    `${fixed(middle + last[0] * MM + beside)},${TOP - 20}`,
  ];
  const [x, y] = points.at(-1)!.split(',').map(Number) as [number, number];
  return html`<rect class="graph-body" x="${left}" y="${TOP}" width="${PANEL}" height="${DEPTH}"/><rect class="graph-card" x="${left}" y="${TOP + DEPTH}" width="${PANEL}" height="${CARD}"/><polyline class="graph-line" points="${points.join(' ')}"/><path class="graph-line" d="M${fixed(x - 4)} ${fixed(y + 7)}L${fixed(x)} ${fixed(y)}L${fixed(x + 4)} ${fixed(y + 7)}"/><text x="${left}" y="${TOP + DEPTH + CARD + 16}">${name}</text>`;
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;
