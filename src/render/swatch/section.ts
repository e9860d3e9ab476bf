/**
 * A cut through a bait: how its cups lie.
 *
 * @packageDocumentation
 */
import type { Pattern } from '../../book/model.ts';
import { type Html, html } from '../html.ts';
import { describedAs } from './pour.ts';

interface Part {
  readonly hex: string;
  readonly share: number;
}

/** Height of the part of a disc of radius 1 that holds a share of its area, from its top; found by halving. */
export function discHeight(share: number): number {
  let [low, high] = [0, 2];
  for (let step = 0; step < 40; step++) {
    const height = (low + high) / 2;
    const inside = Math.acos(1 - height) - (1 - height) * Math.sqrt(Math.max(0, 2 * height - height * height));
    if (inside / Math.PI < share) low = height;
    else high = height;
  }
  return (low + high) / 2;
}

const two = (number: number): number => Math.round(number * 100) / 100;

function layers(parts: readonly Part[]): Html {
  const { hex } = parts.at(-1)!;
  let sum = 0;
  const above = parts.slice(0, -1).map((part) => {
    sum += part.share;
    return { hex: part.hex, height: discHeight(Math.min(sum, 1)) };
  });
  // The last lies under all, each earlier one is a cap over it.
  return html`<circle cx="10" cy="10" r="9.5" fill="${hex}"/>${above.reverse().map((cap) => {
    const y = 0.5 + cap.height * 9.5;
    const x = Math.sqrt(Math.max(0, 9.5 ** 2 - (y - 10) ** 2));
    return html`<path d="M${two(10 - x)} ${two(y)}A9.5 9.5 0 ${cap.height > 1 ? 1 : 0} 1 ${two(10 + x)} ${two(y)}z" fill="${cap.hex}"/>`;
  })}`;
}

function swirled(parts: readonly Part[]): Html {
  const [first, second] = parts as readonly [Part, Part];
  const width = 9.5 * 0.62 * Math.min(1.3, Math.max(0.5, 2 * second.share));
  return html`<circle cx="10" cy="10" r="9.5" fill="${first.hex}"/><path d="M10 3.6C16 3.4 17 10 12.4 11.4C8 12.6 6.4 8.4 9.6 8" fill="none" stroke="${second.hex}" stroke-width="${two(width * 0.52)}" stroke-linecap="round"/><path d="M5 13.4C7 17 13 17.4 15.6 14" fill="none" stroke="${second.hex}" stroke-width="${two(width * 0.46)}" stroke-linecap="round"/>`;
}

/** The cut of a pattern, with the cups in their order. */
export function section(pattern: Pattern, parts: readonly Part[], label = ''): Html {
  const [first, second] = parts;
  let drawn: Html;
  if (first === undefined) drawn = html``;
  else if (second === undefined || pattern === 'solid')
    drawn = html`<circle cx="10" cy="10" r="9.5" fill="${first.hex}"/>`;
  else if (pattern === 'core')
    drawn = html`<circle cx="10" cy="10" r="9.5" fill="${first.hex}"/><circle cx="10" cy="10" r="${two(9.5 * Math.sqrt(second.share))}" fill="${second.hex}"/>`;
  else if (pattern === 'swirl') drawn = swirled(parts);
  else if (pattern === 'tipped') {
    const x = two(19.5 - 19 * Math.max(0.15, second.share));
    // A tip is seen along the bait, not across it.
    drawn = html`<path d="M${x} 5.5H5a4.5 4.5 0 0 0 0 9H${x}z" fill="${first.hex}"/><path d="M${x} 5.5H16l3.5 4.5L16 14.5H${x}z" fill="${second.hex}"/>`;
  } else drawn = layers(parts);
  return html`<svg class="section"${describedAs(label)} width="20" height="20" viewBox="0 0 20 20">${drawn}</svg>`;
}
