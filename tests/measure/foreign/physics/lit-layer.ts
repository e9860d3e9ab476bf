import { beam, flux, henyeyGreenstein, type Phase, slab } from './adding-doubling.ts';
import { fresnelFromInside } from './fresnel.ts';
import { applied, combined, identity, inverse, type Matrix } from './matrix.ts';
import { directions, type Quadrature } from './quadrature.ts';

/**
 * What an eye needs of a layer under its own smooth surface: over a card that throws back a part ρ evenly in all directions, and is in
 * contact with it, what is seen is `own + through ρ / (1 − ρ underneath)`, relative to a perfect diffuser.
 */
export interface LitLayer {
  /** Seen over nothing. */
  readonly own: number;
  /** Down to the card, times up from it. */
  readonly through: number;
  /** Light from the card that comes back to it. */
  readonly underneath: number;
}

/** A medium, ready to be asked for layers. */
export interface Medium {
  readonly quadrature: Quadrature;
  readonly phase: Phase;
  readonly asymmetry: number;
  /** Thrown back at the surface, of each direction inside. */
  readonly surface: Float64Array;
}

/** Plastic of an index, with what scatters of an asymmetry in it; light is followed in so many directions, an even number. */
export function medium(index: number, asymmetry: number, points: number): Medium {
  const quadrature = directions(index, points);
  return {
    quadrature,
    phase: henyeyGreenstein(quadrature, asymmetry),
    asymmetry,
    surface: quadrature.cosines.map((cosine) => fresnelFromInside(index, cosine)),
  };
}

/**
 * A layer lit along the normal, of which all light that leaves it is seen, without the gloss: what an instrument with a sphere and a trap
 * measures, and by Helmholtz's reciprocity what an eye sees that looks straight down by the light of a whole sky.
 *
 * @param scattering reduced scattering times thickness, 0 or more
 * @param absorption absorption times thickness, 0 or more
 */
export function litLayer(
  { quadrature, phase, asymmetry, surface }: Medium,
  scattering: number,
  absorption: number,
): LitLayer {
  const n = surface.length;
  const scattered = scattering / (1 - asymmetry);
  const depth = scattered + absorption;
  const { reflection, transmission } = slab(quadrature, phase, depth === 0 ? 0 : scattered / depth, depth);
  const E = identity(n);
  const falling = scaled(
    beam(quadrature, n - 1),
    surface.map((thrown) => 1 - thrown),
  );
  const down = applied(inverse(combined(1, E, -1, rowsScaled(reflection, surface)), n), falling, n);
  const evenly = applied(transmission, new Float64Array(n).fill(1), n);
  const up = applied(inverse(combined(1, E, -1, columnsScaled(reflection, surface)), n), evenly, n);
  const leaves = (inside: Float64Array): number =>
    flux(
      quadrature,
      scaled(
        inside,
        surface.map((thrown) => 1 - thrown),
      ),
    );
  const again = applied(transmission, scaled(up, surface), n);
  const under = applied(reflection, new Float64Array(n).fill(1), n);
  return {
    own: leaves(applied(reflection, down, n)),
    through: flux(quadrature, applied(transmission, down, n)) * leaves(up),
    underneath: flux(quadrature, combined(1, under, 1, again)),
  };
}

/** What is seen of a lit layer over a card. */
export function seenOver({ own, through, underneath }: LitLayer, card: number): number {
  return own + (through * card) / (1 - card * underneath);
}

function scaled(x: Float64Array, by: Float64Array): Float64Array {
  return x.map((each, i) => each * by[i]!);
}

function rowsScaled(A: Matrix, by: Float64Array): Matrix {
  return A.map((each, at) => each * by[Math.floor(at / by.length)]!);
}

function columnsScaled(A: Matrix, by: Float64Array): Matrix {
  return A.map((each, at) => each * by[at % by.length]!);
}
