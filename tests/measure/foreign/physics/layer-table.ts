import { type LitLayer, litLayer, type Medium } from './lit-layer.ts';

/** Reduced scattering and absorption of a layer, each times its thickness: what is asked for beyond is asked at the edge. */
const SCATTERING = [1e-4, 600] as const;
const ABSORPTION = [1e-5, 120] as const;
const NODES = 56;
const FIELDS = 3;

type Asked = (scattering: number, absorption: number) => LitLayer;

/**
 * Lit layers of a medium, worked out once at nodes that are even in the logarithms of scattering and absorption, and read between them by
 * cubics through four nodes in each direction. A look takes microseconds then; how far it is from `litLayer` is tested.
 */
export function layerTable(medium: Medium): Asked {
  const values = new Float64Array(NODES * NODES * FIELDS);
  for (let i = 0; i < NODES; i++) {
    for (let j = 0; j < NODES; j++) {
      const { own, through, underneath } = litLayer(medium, node(SCATTERING, i), node(ABSORPTION, j));
      values.set(
        [own, through, underneath].map((each) => Math.log(Math.max(1e-300, each))),
        (i * NODES + j) * FIELDS,
      );
    }
  }
  return (scattering, absorption) => {
    const s = place(SCATTERING, scattering);
    const a = place(ABSORPTION, absorption);
    const read = (field: number): number => {
      let sum = 0;
      for (let i = 0; i < 4; i++)
        for (let j = 0; j < 4; j++)
          sum += s.weights[i]! * a.weights[j]! * values[((s.first + i) * NODES + a.first + j) * FIELDS + field]!;
      return Math.exp(sum);
    };
    return { own: read(0), through: read(1), underneath: read(2) };
  };
}

function node([from, to]: readonly [number, number], i: number): number {
  return from * (to / from) ** (i / (NODES - 1));
}

/** The four nodes about a value, and Lagrange's weights of them. */
function place(
  [from, to]: readonly [number, number],
  value: number,
): { readonly first: number; readonly weights: readonly number[] } {
  const within = Math.min(to, Math.max(from, value));
  const at = ((NODES - 1) * Math.log(within / from)) / Math.log(to / from);
  const first = Math.min(NODES - 4, Math.max(0, Math.floor(at) - 1));
  const x = at - first;
  return {
    first,
    weights: [
      ((x - 1) * (x - 2) * (x - 3)) / -6,
      (x * (x - 2) * (x - 3)) / 2,
      (x * (x - 1) * (x - 3)) / -2,
      (x * (x - 1) * (x - 2)) / 6,
    ],
  };
}
