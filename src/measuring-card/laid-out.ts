import { bareSpots } from './bare-spots.ts';
import { type Box, boxAround, grown, type Place } from './box.ts';
import { FRAME_MM, GREY_VALUES, type Grey, type Mark, type MeasuringCard, SCALE_MM } from './card.ts';
import { bottomEdge, type Edge, edgesAround, topEdge } from './dark-edges.ts';

/** What one kind of card has of its own; the rest follows from it. */
export interface CardSizes {
  readonly kind: MeasuringCard['kind'];
  /** Ids of the marks, clockwise from the left top; another version of a kind takes others. */
  readonly ids: readonly [number, number, number, number];
  readonly width: number;
  readonly height: number;
  readonly mark: number;
  readonly window: readonly [width: number, height: number];
  readonly grey: readonly [width: number, height: number, gap: number, fromWindow: number];
  /** How far the ticks of the scale begin below the window. */
  readonly scaleBelow: number;
  readonly wordsAbove: readonly [y: number, width: number, height: number];
  readonly address: number;
  readonly spotPitch: number;
}

/** How far a card's marks lie from its edge, mm: a mark is only found with white around it. */
const MARK_FROM_EDGE = 5;

/** How much of the window's height a bait is expected to take. */
const BAIT_SHARE = 0.7;

/** How far spots of black lie from each other, and from the ends of the black half, mm. */
const BLACK_PITCH = 4;

/** The lightest grey differs too little from paper for its edges to be found in a dim photo. */
const FIRST_DARK_STEP = 1;

/** A card with everything at its place. */
export function laidOut(sizes: CardSizes): MeasuringCard {
  const { kind, width, height } = sizes;
  const middle: Place = { x: width / 2, y: height / 2 };
  const window = boxAround(middle, ...sizes.window);
  const marks = marksOf(sizes);
  const greys = greysOf(sizes, window);
  const scale: Box = {
    x: middle.x - SCALE_MM / 2,
    y: window.y + window.height + sizes.scaleBelow,
    width: SCALE_MM,
    height: 4,
  };
  const [wordsY, wordsWidth, wordsHeight] = sizes.wordsAbove;
  const words: MeasuringCard['words'] = [
    { x: middle.x - wordsWidth / 2, y: wordsY, width: wordsWidth, height: wordsHeight },
    { x: scale.x - 2, y: scale.y + scale.height, width: SCALE_MM + 4, height: 7 },
  ];
  const address = boxAround({ x: window.x / 2, y: middle.y }, sizes.address, sizes.address);
  const black: Box = { ...window, x: middle.x, width: window.width / 2 };
  const alongBait = boxAround(middle, width, window.height * BAIT_SHARE);
  const taken = [...marks, ...greys, grown(window, FRAME_MM), scale, ...words, address, alongBait];
  return {
    kind,
    version: 1,
    width,
    height,
    marks,
    window,
    seamX: middle.x,
    greys,
    scale,
    paperSpots: bareSpots(sizes, taken, sizes.spotPitch),
    blackSpots: blackSpotsOf(black),
    edges: edgesOf(marks, greys, black),
    words,
    address,
  };
}

function marksOf({ ids, width, height, mark: side }: CardSizes): readonly Mark[] {
  const right = width - MARK_FROM_EDGE - side;
  const bottom = height - MARK_FROM_EDGE - side;
  const size = { width: side, height: side };
  return [
    { id: ids[0], corner: 'left-top', x: MARK_FROM_EDGE, y: MARK_FROM_EDGE, ...size },
    { id: ids[1], corner: 'right-top', x: right, y: MARK_FROM_EDGE, ...size },
    { id: ids[2], corner: 'right-bottom', x: right, y: bottom, ...size },
    { id: ids[3], corner: 'left-bottom', x: MARK_FROM_EDGE, y: bottom, ...size },
  ];
}

function greysOf({ grey }: CardSizes, window: Box): readonly Grey[] {
  const [width, height, gap, fromWindow] = grey;
  const last = GREY_VALUES.length - 1;
  const first = window.x + window.width / 2 - (GREY_VALUES.length * (width + gap) - gap) / 2;
  const above = window.y - fromWindow - height;
  const below = window.y + window.height + fromWindow;
  const row = (name: Grey['row'], y: number) =>
    GREY_VALUES.map((_, column): Grey => {
      const step = name === 'above' ? column : last - column;
      return { row: name, step, x: first + column * (width + gap), y, width, height };
    });
  return [...row('above', above), ...row('below', below)];
}

function blackSpotsOf({ x, y, width, height }: Box): readonly Place[] {
  const fromEdge = (height * (1 - BAIT_SHARE)) / 4;
  const count = Math.floor(width / BLACK_PITCH) - 1;
  return [y + fromEdge, y + height - fromEdge].flatMap((row) =>
    Array.from({ length: count }, (_, index) => ({ x: x + (index + 1) * BLACK_PITCH, y: row })),
  );
}

function edgesOf(marks: readonly Mark[], greys: readonly Grey[], black: Box): readonly Edge[] {
  const halves = [0, 1].map(
    (half): Box => ({ ...black, x: black.x + (half * black.width) / 2, width: black.width / 2 }),
  );
  return [
    ...marks.flatMap(edgesAround),
    ...greys.filter(({ step }) => step >= FIRST_DARK_STEP).flatMap(edgesAround),
    ...halves.flatMap((half) => [topEdge(half), bottomEdge(half)]),
  ];
}
