/**
 * A pinhole camera over a table, with one radial term.
 *
 * Places on the table are mm: x to the right, y down (towards whoever looks), height up from the table.
 *
 * @packageDocumentation
 */

/** Where a camera stands, and what it is. */
export interface Pose {
  /** Pixels of the photo. */
  readonly width: number;
  readonly height: number;
  /** Pixels from the pinhole to the picture. */
  readonly focal: number;
  /** How far the camera leans from straight above, and to which side; how far it is turned. All radians. */
  readonly tilt: number;
  readonly towards: number;
  readonly turn: number;
  /** What it looks at, mm, and from how far. */
  readonly at: readonly [x: number, y: number];
  readonly distance: number;
  /** How much farther out a corner of the photo would lie without the lens: part of its distance from the middle. */
  readonly radial: number;
}

/** Where a line of sight meets the table, and how it runs from there: mm sideways for each mm of height. */
export interface Sight {
  x: number;
  y: number;
  leanX: number;
  leanY: number;
  /** Cosine of the angle to the lens' axis. */
  axis: number;
}

type Vector = readonly [number, number, number];

/** The camera of a pose. */
export class Lens {
  readonly #pose: Pose;
  readonly #from: Vector;
  readonly #forward: Vector;
  readonly #right: Vector;
  readonly #down: Vector;

  constructor(pose: Pose) {
    this.#pose = pose;
    const { tilt, towards, turn, at, distance } = pose;
    const up: Vector = [Math.sin(tilt) * Math.cos(towards), Math.sin(tilt) * Math.sin(towards), Math.cos(tilt)];
    this.#from = [at[0] + distance * up[0], at[1] + distance * up[1], distance * up[2]];
    this.#forward = [-up[0], -up[1], -up[2]];
    // Along the table's x as far as the leaning allows, then turned about the axis.
    const level = unit([1 - up[0] * up[0], -up[0] * up[1], -up[0] * up[2]]);
    const below = cross(level, this.#forward);
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    this.#right = unit([0, 1, 2].map((axis) => cos * level[axis]! + sin * below[axis]!));
    this.#down = unit([0, 1, 2].map((axis) => cos * below[axis]! - sin * level[axis]!));
  }

  /** Where in the photo a place lies, in pixels from its left top corner. */
  toPixel(x: number, y: number, height = 0): readonly [u: number, v: number] {
    const seen: Vector = [x - this.#from[0], y - this.#from[1], height - this.#from[2]];
    const { width, height: rows, focal, radial } = this.#pose;
    const depth = dot(seen, this.#forward);
    const [right, down] = [(focal * dot(seen, this.#right)) / depth, (focal * dot(seen, this.#down)) / depth];
    const corner = Math.hypot(width, rows) / 2;
    let shrink = 1;
    for (let round = 0; round < 12; round++)
      shrink = 1 / (1 + radial * ((shrink * Math.hypot(right, down)) / corner) ** 2);
    return [width / 2 + right * shrink, rows / 2 + down * shrink];
  }

  /** What is seen through a place of the photo, in pixels, put into `sight`. */
  look(u: number, v: number, sight: Sight): void {
    const { width, height, focal, radial } = this.#pose;
    const [across, below] = [u - width / 2, v - height / 2];
    const outwards = (across * across + below * below) / ((width * width + height * height) / 4);
    const grown = (1 + radial * outwards) / focal;
    const [a, b] = [across * grown, below * grown];
    const [forward, right, down] = [this.#forward, this.#right, this.#down];
    const x = forward[0] + a * right[0] + b * down[0];
    const y = forward[1] + a * right[1] + b * down[1];
    const rise = forward[2] + a * right[2] + b * down[2];
    const reach = -this.#from[2] / rise;
    sight.x = this.#from[0] + reach * x;
    sight.y = this.#from[1] + reach * y;
    sight.leanX = x / rise;
    sight.leanY = y / rise;
    sight.axis = 1 / Math.sqrt(1 + a * a + b * b);
  }

  /** The direction from what is looked at to the camera: x, y, up. */
  get towards(): Vector {
    return [-this.#forward[0], -this.#forward[1], -this.#forward[2]];
  }
}

/** The pose that comes as near as it can with all of some places in the photo, a part of its width and height kept free all round. */
export function filled(
  pose: Omit<Pose, 'distance'>,
  places: readonly (readonly [number, number])[],
  free: number,
): Pose {
  const holds = (distance: number): boolean => {
    const lens = new Lens({ ...pose, distance });
    return places.every(([x, y]) => {
      const [u, v] = lens.toPixel(x, y);
      return Math.abs(u / pose.width - 0.5) < 0.5 - free && Math.abs(v / pose.height - 0.5) < 0.5 - free;
    });
  };
  let [near, far] = [120, 2000];
  for (let round = 0; round < 24; round++) {
    const middle = (near + far) / 2;
    if (holds(middle)) far = middle;
    else near = middle;
  }
  return { ...pose, distance: far };
}

function dot(one: Vector, other: Vector): number {
  return one[0] * other[0] + one[1] * other[1] + one[2] * other[2];
}

/** Right-handed with x, y and up as they lie here: to the right, down, and out of the table towards the eye. */
function cross(one: Vector, other: Vector): Vector {
  return [
    one[1] * other[2] - one[2] * other[1],
    one[2] * other[0] - one[0] * other[2],
    one[0] * other[1] - one[1] * other[0],
  ];
}

function unit(vector: readonly number[]): Vector {
  const [x = 0, y = 0, z = 0] = vector;
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
}
