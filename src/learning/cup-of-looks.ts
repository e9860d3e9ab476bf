import type { LookedLayer, TaughtLook } from './learning-data.ts';
import type { LogSlip } from './log-fault.ts';

/** What of a slip says what was in the cup. */
type Amiss = Pick<Exclude<LogSlip, { kind: 'bad-look' }>, 'kind' | 'material' | 'gramsPerMl'> & {
  readonly instead?: string;
};

/** g/ml, by material. */
type Contents = ReadonlyMap<string, number>;

// Less than this part of what is there has not been added, but comes of rounding.
const LEAST_ADDED = 1e-3;

/** One cup as its looks know it, as one of the layers of what was looked at: what went in before one of them, and what if it was otherwise. */
export class CupOfLooks {
  private readonly looks: readonly TaughtLook[];
  private readonly first: number;
  private readonly layer: number;

  /**
   * @param looks by round
   * @param first place of the look before which it went in
   */
  constructor(looks: readonly TaughtLook[], first: number, layer: number) {
    this.looks = looks;
    this.first = first;
    this.layer = layer;
  }

  /** What went in between that look and the one of the round before. */
  added(): Contents {
    const now = this.contents(this.first)!;
    const { round } = this.looks[this.first]!;
    const before = this.looks.findLastIndex((look, i) => i < this.first && look.round < round && this.contents(i));
    if (before < 0) return now;
    const was = this.contents(before)!;
    const thinned = thinning(was, now);
    const added = [...now].map(([id, dose]) => [id, dose - thinned * (was.get(id) ?? 0)] as const);
    return new Map(added.filter(([id, dose]) => dose > LEAST_ADDED * now.get(id)!));
  }

  /**
   * The looks, if there was a slip: that one and those after it are at what it has made of the cup, as later steps have thinned it.
   *
   * @param logged g/ml that is logged of what slipped
   */
  after({ kind, material, instead, gramsPerMl }: Amiss, logged: number): readonly TaughtLook[] {
    let carried = 1;
    let before = this.contents(this.first)!;
    return this.looks.map((look, i) => {
      const now = i < this.first ? undefined : this.contents(i);
      if (!now) return look;
      carried *= thinning(before, now);
      before = now;
      const contents = new Map(now);
      const put = (id: string, dose: number): void => {
        contents.set(id, Math.max(0, (contents.get(id) ?? 0) + carried * dose));
      };
      if (kind !== 'extra') put(material, -logged);
      if (kind !== 'left-out') put(instead ?? material, gramsPerMl);
      return this.withContents(look, contents);
    });
  }

  /** Undefined of a bait with other layers than that look's: it was made of other cups. */
  private contents(look: number): Contents | undefined {
    const { layers } = this.looks[look]!;
    return layers.length === this.looks[this.first]!.layers.length ? new Map(layers[this.layer]!.contents) : undefined;
  }

  private withContents(look: TaughtLook, contents: Contents): TaughtLook {
    const layers = look.layers.map(
      (layer, l): LookedLayer =>
        l === this.layer ? { ...layer, contents: [...contents].filter(([, dose]) => dose > 0) } : layer,
    );
    return { ...look, layers };
  }
}

/** By how much plastic that was added has thinned a cup: nothing becomes less otherwise. */
function thinning(before: Contents, now: Contents): number {
  let least = 1;
  for (const [id, dose] of before) if (dose > 0) least = Math.min(least, (now.get(id) ?? 0) / dose);
  return least;
}
