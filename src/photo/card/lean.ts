/**
 * From where a camera looks at a card: what stands up from it is seen beside where it stands.
 *
 * @packageDocumentation
 */
import type { Place } from '../../measuring-card/measuring-card.ts';
import { after, type Homography } from './homography.ts';

/** Focal lengths of phones' usual cameras, as a part of the photo's long side: 26 mm where a film is 36 mm wide. Common practice, no source. */
const FOCAL = 0.75;

/**
 * How far over the card a line of sight moves for each mm that it rises, where it meets a place of the card. What is `h` high and seen at a
 * place stands at that place, and `h` times this.
 *
 * The camera's eye lies where a plane seen by H is met by its lens, whose axis goes through the photo's middle: Hartley & Zisserman (see
 * `homography.ts`), section 8.1.
 */
export function leanAt(H: Homography, width: number, height: number): (place: Place) => Place {
  const f = FOCAL * Math.max(width, height);
  const K = after([1 / f, 0, 0, 0, 1 / f, 0, 0, 0, 1], after([1, 0, -width / 2, 0, 1, -height / 2, 0, 0, 1], H));
  const column = (i: number): readonly [number, number, number] => [K[i]!, K[3 + i]!, K[6 + i]!];
  const [first, second, third] = [column(0), column(1), column(2)];
  const size = Math.sqrt(length(first) * length(second));
  // What is left of the axes' lengths and of the angle between them is how far the focal length is off.
  const across = cross(first, second);
  const eyeFrom = solve(first, second, across, third);
  const far = Math.abs(eyeFrom[2]) * (length(across) / size);
  return ({ x, y }) => ({ x: (-eyeFrom[0] - x) / far, y: (-eyeFrom[1] - y) / far });
}

type Three = readonly [number, number, number];

const length = ([a, b, c]: Three): number => Math.hypot(a, b, c);
const dot = (one: Three, other: Three): number => one[0] * other[0] + one[1] * other[1] + one[2] * other[2];

function cross(one: Three, other: Three): Three {
  return [
    one[1] * other[2] - one[2] * other[1],
    one[2] * other[0] - one[0] * other[2],
    one[0] * other[1] - one[1] * other[0],
  ];
}

/** How much of three directions makes up a fourth. */
function solve(a: Three, b: Three, c: Three, made: Three): Three {
  const all = dot(a, cross(b, c));
  return [dot(made, cross(b, c)) / all, dot(a, cross(made, c)) / all, dot(a, cross(b, made)) / all];
}
