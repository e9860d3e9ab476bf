/**
 * The room in which a bait is drawn: a wide softbox above and to the left, a narrow one below, dim walls, and the card on which the bait
 * lies. No measured light: it is what makes a picture readable, and is told apart from what is computed.
 *
 * @packageDocumentation
 */

/** Where the softbox is seen in a mirror that lies flat: the middle of it, and half of its width and height, as parts of the unit vector. */
const WINDOW = { x: -0.1, y: -0.58, halfWide: 0.86, halfHigh: 0.17, soft: 0.1, light: 11 };
const STRIP = { y: 0.72, halfWide: 0.7, halfHigh: 0.035, soft: 0.1, light: 1.5 };
const WALL = { above: 0.4, below: 0.12, round: 1 };
/** A bright wall behind the card, above: it draws the upper edge of a bait on a black card. */
const BACK = { from: -0.25, to: -0.75, light: 1.5 };

/** 1 well inside a border, 0 well outside, and smooth between. */
function within(distance: number, soft: number): number {
  const part = Math.min(1, Math.max(0, 0.5 + distance / (2 * soft)));
  return part * part * (3 - 2 * part);
}

/** Light of the softbox alone along a mirrored ray, 0 to 1: what a flake's face shows of it too. */
export function windowAlong(x: number, y: number): number {
  const wide = within(WINDOW.halfWide - Math.abs(x - WINDOW.x), 3 * WINDOW.soft);
  const high = within(WINDOW.halfHigh - Math.abs(y - WINDOW.y), WINDOW.soft);
  return wide * high;
}

/**
 * What comes along a mirrored ray from the room, where the white card is 1.
 *
 * @param x to the right, `y` down, `z` towards the eye: a unit vector
 */
export function roomAlong(x: number, y: number, z: number): number {
  const fromWindow = WINDOW.light * windowAlong(x, y);
  const halo = WALL.round * Math.exp(-(((y - WINDOW.y) / 0.34) ** 2) - ((x - WINDOW.x) / 0.9) ** 2);
  const strip =
    STRIP.light *
    within(STRIP.halfHigh - Math.abs(y - STRIP.y), STRIP.soft) *
    within(STRIP.halfWide - Math.abs(x), 3 * STRIP.soft);
  const wall = WALL.below + (WALL.above - WALL.below) * (0.5 - 0.5 * y);
  const back = BACK.light * within(BACK.from - z, 0.15) * within(z - BACK.to, 0.15) * Math.max(0, -y);
  return (fromWindow + halo + strip + wall) * (1 - cardAlong(z)) + back;
}

/** How much of a mirrored ray ends on the card, 0 to 1: of one that runs downwards, all. */
export function cardAlong(z: number): number {
  return within(-z - 0.12, 0.22);
}
