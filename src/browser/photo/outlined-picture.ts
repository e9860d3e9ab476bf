import type { BaitLine, PhotoPlace, ReadAnswer } from './measure-request.ts';

/** Widths of what is drawn over a photo, part of its longer side: seen on every colour, as a light line in a dark one. */
const DARK = 0.0045;
const LIGHT = 0.002;

/** Draws a photo, with what was found in it outlined, and the line that a maker draws along the bait. */
export function drawPicture(canvas: HTMLCanvasElement, { picture, width, found }: ReadAnswer, line?: BaitLine): void {
  canvas.width = picture.width;
  canvas.height = picture.height;
  const context = canvas.getContext('2d')!;
  context.drawImage(picture, 0, 0);
  const by = picture.width / width;
  const outline = (places: readonly PhotoPlace[], closed: boolean): void => {
    context.beginPath();
    for (const [at, { x, y }] of places.entries())
      if (at === 0) context.moveTo(x * by, y * by);
      else context.lineTo(x * by, y * by);
    if (closed) context.closePath();
    for (const [colour, part] of [
      ['#000', DARK],
      ['#fff', LIGHT],
    ] as const) {
      context.strokeStyle = colour;
      context.lineWidth = Math.max(1, part * Math.max(canvas.width, canvas.height));
      context.stroke();
    }
  };
  context.lineJoin = 'round';
  context.lineCap = 'round';
  if (found.kind === 'measured' && line === undefined) {
    outline(found.baitPixels, true);
    for (const zone of found.zonePixels) outline(zone, true);
  }
  if (line === undefined) return;
  outline(line, false);
  const end = 2 * DARK * Math.max(width, picture.height / by);
  for (const { x, y } of line)
    outline(
      Array.from({ length: 16 }, (_, at) => ({
        x: x + end * Math.cos((at * Math.PI) / 8),
        y: y + end * Math.sin((at * Math.PI) / 8),
      })),
      true,
    );
}
