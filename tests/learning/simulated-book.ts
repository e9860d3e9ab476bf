import { compose, composeLabel } from '../../src/learning/composition.ts';
import { CompositionLooker } from '../../src/learning/composition-views.ts';
import type { LearningData, LookedLayer, TaughtLook, TaughtMaterial } from '../../src/learning/learning-data.ts';
import { shelfState } from '../../src/learning/shelf-state.ts';
import { shelfUnknowns } from '../../src/learning/shelf-unknowns.ts';
import type { Lab } from '../../src/optics/cielab.ts';
import { localMetric } from '../../src/optics/local-metric.ts';
import { plasticConstants } from '../../src/optics/plastic.ts';

/** How a book is to be made up. */
export interface SimulatedBook {
  readonly seed: number;
  readonly materials: number;
  readonly recipes: number;
  /** Looks a recipe; each but the first with an addition before it. */
  readonly rounds: number;
  /** ΔE00 along each axis that looks err by; unset: .4. */
  readonly axisSd?: number;
  readonly camera?: string;
}

/** The made-up book and the theta that its colours come from. */
export interface MadeBook {
  readonly data: LearningData;
  readonly truth: Float64Array;
}

/** A repeatable stream of numbers between 0 and 1, and of normal ones. */
export function numbersFrom(seed: number): { uniform(): number; normal(): number } {
  let state = (seed * 2654435761 + 12345) >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    uniform,
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}

const KINDS = ['pigment', 'dye', 'pearl', 'pigment', 'white', 'dye', 'pigment'] as const;
const CLEAR = plasticConstants('clear');

const plainShelf = (count: number): readonly TaughtMaterial[] => [
  ...Array.from({ length: count }, (_, i) => ({
    id: `m${String(i).padStart(2, '0')}`,
    prior: { kind: KINDS[i % KINDS.length]!, typical: 0.0085 },
    labels: [],
  })),
  {
    id: 'plastic',
    prior: {
      kind: 'plastic',
      constants: { absorption: Array.from(CLEAR.absorption), scattering: Array.from(CLEAR.scattering) },
    },
    labels: [],
  },
];

/** A book of cups whose colours come from this book's own physics at a theta that is drawn. */
export function simulatedBook({ seed, materials, recipes, rounds, axisSd = 0.4, camera }: SimulatedBook): MadeBook {
  const { uniform, normal } = numbersFrom(seed);
  const shelf = plainShelf(materials);
  const unknowns = shelfUnknowns({ materials: shelf, looks: [] });
  const truth = Float64Array.from({ length: unknowns.count }, () => Math.max(-2, Math.min(2, normal())));
  const state = shelfState(unknowns, truth);
  const looker = new CompositionLooker(unknowns);
  const noisy = (lab: Lab, sd: number): Lab => {
    const M = localMetric(lab);
    const b = (sd * normal()) / M[8]!;
    const a = (sd * normal() - M[5]! * b) / M[4]!;
    return { L: lab.L + (sd * normal() - M[1]! * a - M[2]! * b) / M[0]!, a: lab.a + a, b: lab.b + b };
  };
  const seen = (composition: ReturnType<typeof compose>, sd: number): { overWhite: Lab; overBlack: Lab } => {
    const { white, black } = looker.views(composition, state, { white: true, black: true });
    return { overWhite: noisy(white!.lab, sd), overBlack: noisy(black!.lab, sd) };
  };
  const taught = shelf.map((material, i): TaughtMaterial => {
    if (material.prior.kind === 'plastic') return material;
    const label = { dose: 0.0085, thicknessMm: material.prior.kind === 'dye' ? 10 : 6 };
    const byHex = i % 2 === 0;
    const sd = byHex ? 4 / Math.sqrt(3) : 1.3 / Math.sqrt(3);
    const { overWhite, overBlack } = seen(composeLabel(unknowns, material.id, label), sd);
    return { ...material, labels: [{ ...label, overWhite, ...(byHex ? {} : { overBlack }), axisSd: sd }] };
  });
  const looks: TaughtLook[] = [];
  for (let recipe = 0; recipe < recipes; recipe++) {
    const ids = Array.from(
      { length: 2 + Math.floor(3 * uniform()) },
      () => `m${String(Math.floor(materials * uniform())).padStart(2, '0')}`,
    );
    const contents = new Map([...new Set(ids)].map((id) => [id, 0.0085 * Math.exp(-3 * uniform())]));
    const thicknessMm = [3, 6, 8][Math.floor(3 * uniform())]!;
    for (let round = 0; round < rounds; round++) {
      if (round > 0) {
        const added = ids[Math.floor(ids.length * uniform())]!;
        contents.set(added, contents.get(added)! * (1.2 + 0.5 * uniform()));
      }
      const layers: readonly LookedLayer[] = [{ plastics: [['plastic', 1]], contents: [...contents], thicknessMm }];
      const cup = `r${String(recipe).padStart(4, '0')}/cup`;
      looks.push({
        key: `${cup}/${round}`,
        cup,
        round,
        layers,
        ...seen(compose(unknowns, layers), axisSd),
        axisSd,
        means: camera ? 'screen' : 'instrument',
        ...(camera ? { camera } : {}),
      });
    }
  }
  return { data: { materials: taught, looks }, truth };
}
