/**
 * Photos of the printed card from its printed picture, by a plain pinhole camera: no noise, no blur but that of pixels. What is measured of
 * them is compared with the homography they were made with.
 */
import sharp from 'sharp';
import type { MeasuringCard, Place } from '../../../src/measuring-card/measuring-card.ts';
import type { Pixels } from '../../../src/photo/pixels.ts';
import { cardPicture } from '../../../src/render/measuring-card/card-picture.ts';

/** The card's printed picture, linear light, so many values a mm. */
interface Print {
  readonly perMm: number;
  readonly columns: number;
  readonly rows: number;
  readonly light: Float32Array;
}

const prints = new Map<string, Promise<Print>>();

function printOf(card: MeasuringCard, perMm: number): Promise<Print> {
  const known = prints.get(card.kind);
  if (known) return known;
  const { width, height } = card;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"><path fill="#fff" d="M0 0h${width}v${height}H0z"/>${cardPicture(card)}</svg>`;
  const print = sharp(Buffer.from(svg), { density: 25.4 * perMm })
    .resize(width * perMm, height * perMm, { fit: 'fill' })
    .greyscale()
    .raw()
    .toBuffer()
    .then(
      (bytes): Print => ({
        perMm,
        columns: width * perMm,
        rows: height * perMm,
        light: Float32Array.from(bytes, (byte) => toLight(byte / 255)),
      }),
    );
  prints.set(card.kind, print);
  return print;
}

/** How a camera looks at a card. */
export interface Look {
  readonly width: number;
  readonly height: number;
  /** Pixels a mm at the card's middle, which lies in the photo's. */
  readonly perMm: number;
  /** The card is turned in its plane, and then tilted away from the camera, degrees. */
  readonly turn?: number;
  readonly tilt?: number;
  /** The lens moves what lies r half diagonals from the middle to r (1 + k1 r²). */
  readonly k1?: number;
  /** How far the card's middle lies from the photo's, pixels. */
  readonly aside?: Place;
}

/** Distance of the camera, mm. */
const FAR = 300;

/** Where a place of the card lies, pixels. */
export function seenAt(card: MeasuringCard, look: Look, { x, y }: Place): Place {
  const { width, height, perMm, turn = 0, tilt = 0, k1 = 0, aside = { x: 0, y: 0 } } = look;
  const [alpha, beta] = [(turn * Math.PI) / 180, (tilt * Math.PI) / 180];
  const [u, v] = [x - card.width / 2, y - card.height / 2];
  const [right, down] = [Math.cos(alpha) * u - Math.sin(alpha) * v, Math.sin(alpha) * u + Math.cos(alpha) * v];
  const nearer = FAR / (FAR - Math.sin(beta) * down);
  const flat = { x: perMm * nearer * right + aside.x, y: perMm * nearer * Math.cos(beta) * down + aside.y };
  const stretch = 1 + (4 * k1 * (flat.x ** 2 + flat.y ** 2)) / (width ** 2 + height ** 2);
  return { x: width / 2 + flat.x * stretch, y: height / 2 + flat.y * stretch };
}

/** And back. */
function placeAt(card: MeasuringCard, look: Look, pixel: Place): Place {
  const { width, height, perMm, turn = 0, tilt = 0, k1 = 0, aside = { x: 0, y: 0 } } = look;
  const [alpha, beta] = [(turn * Math.PI) / 180, (tilt * Math.PI) / 180];
  const bent = { x: pixel.x - width / 2, y: pixel.y - height / 2 };
  let stretch = 1;
  for (let round = 0; k1 !== 0 && round < 12; round++)
    stretch = 1 + (4 * k1 * (bent.x ** 2 + bent.y ** 2)) / (stretch * stretch * (width ** 2 + height ** 2));
  const flat = { x: bent.x / stretch - aside.x, y: bent.y / stretch - aside.y };
  const down = (flat.y * FAR) / (perMm * Math.cos(beta) * FAR + flat.y * Math.sin(beta));
  const right = (flat.x * (FAR - Math.sin(beta) * down)) / (perMm * FAR);
  const u = Math.cos(alpha) * right + Math.sin(alpha) * down;
  const v = Math.cos(alpha) * down - Math.sin(alpha) * right;
  return { x: u + card.width / 2, y: v + card.height / 2 };
}

/** What a photo is of, beside the card. */
export interface Surroundings {
  /** Light at a place of the card, of each channel, paper's linear level: 0.8 where it is not said. */
  readonly light?: (place: Place) => readonly [number, number, number];
  /** What covers the card: its linear light at a place, or undefined where nothing does. */
  readonly covered?: (place: Place) => number | undefined;
  /** Linear light of black ink, as a part of paper's. */
  readonly ink?: number;
  /** Cards lie side by side on the sheet, as many across and down. */
  readonly sheet?: readonly [across: number, down: number];
}

/** Takes a photo: four points a pixel, sRGB. */
export async function photoOfCard(card: MeasuringCard, look: Look, around: Surroundings = {}): Promise<Pixels> {
  const print = await printOf(card, card.kind === 'small' ? 20 : 10);
  const { light = () => [0.8, 0.8, 0.8] as const, covered = () => undefined, ink = 0.04, sheet = [1, 1] } = around;
  const data = new Uint8ClampedArray(4 * look.width * look.height);
  for (let row = 0; row < look.height; row++) {
    for (let column = 0; column < look.width; column++) {
      const sum = [0, 0, 0];
      for (const [x, y] of [
        [0.25, 0.25],
        [0.75, 0.25],
        [0.25, 0.75],
        [0.75, 0.75],
      ] as const) {
        const place = placeAt(card, look, { x: column + x, y: row + y });
        const onCard = lightOn(print, card, place, sheet);
        const seen = covered(place) ?? (onCard === undefined ? 0.18 : ink + (1 - ink) * onCard);
        light(place).forEach((level, channel) => {
          sum[channel]! += (seen * level) / 4;
        });
      }
      sum.forEach((value, channel) => {
        data[4 * (row * look.width + column) + channel] = 255 * toByte(value);
      });
      data[4 * (row * look.width + column) + 3] = 255;
    }
  }
  return { data, width: look.width, height: look.height };
}

function lightOn(print: Print, card: MeasuringCard, { x, y }: Place, [across, down]: readonly [number, number]) {
  if (!(x >= 0 && y >= 0 && x < across * card.width && y < down * card.height)) return undefined;
  const column = Math.floor((x % card.width) * print.perMm);
  const row = Math.floor((y % card.height) * print.perMm);
  return print.light[row * print.columns + column]!;
}

function toLight(v: number): number {
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
}

function toByte(light: number): number {
  const L = Math.min(1, Math.max(0, light));
  return L <= 0.0031308 ? 12.92 * L : 1.055 * L ** (1 / 2.4) - 0.055;
}
