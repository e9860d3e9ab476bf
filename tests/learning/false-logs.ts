import { compose } from '../../src/learning/composition.ts';
import { CompositionLooker } from '../../src/learning/composition-views.ts';
import type { LearningData, LookedLayer, TaughtLook } from '../../src/learning/learning-data.ts';
import { shelfState } from '../../src/learning/shelf-state.ts';
import { shelfUnknowns } from '../../src/learning/shelf-unknowns.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { numbersFrom } from './simulated-book.ts';

/** What is false in a book, and since when. */
export interface FalseLog {
  readonly cup: string;
  readonly round: number;
  readonly slip:
    | { readonly kind: 'left-out' | 'extra'; readonly material: string }
    | { readonly kind: 'swapped'; readonly material: string; readonly instead: string }
    | { readonly kind: 'bad-look' };
  /** ΔE00 between what is there and what is logged, by the truth: the larger of the views, at the first false look. */
  readonly size: number;
}

const TYPICAL = 0.0085;
const FALSE_CUPS = 0.2;
const OTHER_CUPS = 0.04;

/**
 * A book whose makers slip: colours stay, and logs are made false. One slip a cup at most.
 *
 * @param theta what the colours come from
 */
export function withFalseLogs(
  data: LearningData,
  theta: Float64Array,
  seed: number,
): { readonly data: LearningData; readonly slips: readonly FalseLog[] } {
  const { uniform } = numbersFrom(seed);
  const oneOf = <T>(all: readonly T[]): T => all[Math.floor(uniform() * all.length)]!;
  const unknowns = shelfUnknowns(data);
  const state = shelfState(unknowns, theta);
  const looker = new CompositionLooker(unknowns);
  const ids = data.materials.flatMap(({ id, prior }) => (prior.kind === 'plastic' ? [] : id));
  const size = (one: readonly LookedLayer[], other: readonly LookedLayer[]): number => {
    const [a, b] = [one, other].map((layers) =>
      looker.views(compose(unknowns, layers), state, { white: true, black: true }),
    );
    return Math.max(deltaE00(a!.white!.lab, b!.white!.lab), deltaE00(a!.black!.lab, b!.black!.lab));
  };
  const slips: FalseLog[] = [];
  const cups = [...new Set(data.looks.map(({ cup }) => cup))];
  const looks = cups.flatMap((cup) => {
    const own = data.looks.filter((look) => look.cup === cup);
    const chance = uniform();
    if (chance < OTHER_CUPS) {
      const at = Math.floor(uniform() * own.length);
      const other = oneOf(data.looks);
      const { round, layers } = own[at]!;
      slips.push({ cup, round, slip: { kind: 'bad-look' }, size: size(layers, other.layers) });
      return own.map(
        (look, i): TaughtLook =>
          i === at ? { ...look, overWhite: other.overWhite!, overBlack: other.overBlack! } : look,
      );
    }
    if (chance > OTHER_CUPS + FALSE_CUPS) return own;
    const at = Math.floor(uniform() * own.length);
    const { round } = own[at]!;
    const added = addedAt(own, at);
    const [material, dose] = oneOf([...added]);
    const kind = oneOf(['left-out', 'extra', 'swapped'] as const);
    // What is logged and did not go in is not among what is there.
    const other = oneOf(ids.filter((id) => !added.has(id)));
    const otherDose = TYPICAL * 0.1 ** uniform();
    const slip: FalseLog['slip'] =
      kind === 'left-out'
        ? { kind, material: other }
        : kind === 'extra'
          ? { kind, material }
          : { kind, material: other, instead: material };
    const logged = own.map((look, i): TaughtLook => {
      if (i < at) return look;
      const contents = new Map(look.layers[0]!.contents);
      if (kind !== 'left-out') contents.set(material, contents.get(material)! - dose);
      if (kind !== 'extra') contents.set(other, (contents.get(other) ?? 0) + (kind === 'swapped' ? dose : otherDose));
      const left = [...contents].filter(([, each]) => each > 1e-12);
      return { ...look, layers: [{ ...look.layers[0]!, contents: left }] };
    });
    slips.push({ cup, round, slip, size: size(own[at]!.layers, logged[at]!.layers) });
    return logged;
  });
  return { data: { ...data, looks }, slips };
}

/** What went in before a look, g/ml: all of the first. */
function addedAt(own: readonly TaughtLook[], at: number): ReadonlyMap<string, number> {
  const before = new Map(at === 0 ? [] : own[at - 1]!.layers[0]!.contents);
  return new Map(
    own[at]!.layers[0]!.contents.map(([id, dose]) => [id, dose - (before.get(id) ?? 0)] as const).filter(
      ([, dose]) => dose > 1e-12,
    ),
  );
}
