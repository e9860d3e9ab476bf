import { type Flake, metFlake } from '../../optics/flake.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { type SeenFlake, seenCoverage } from '../../optics/seen-coverage.ts';
import type { Body, Layer } from '../../optics/stack.ts';
import { hasTwoSides, PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import { MIDDLE } from '../../patterns/place.ts';
import { required } from '../../values/required.ts';
import type { Cup, FlakeLook } from '../model/cup.ts';

/** A shelf of which the flake is looked up. */
type FlakeShelf = ReadonlyMap<string, { readonly flake?: Flake }>;

/** A cup of a bait, with the optics of its plastic. */
export interface FlakedCup {
  readonly cup: Pick<Cup, 'contents' | 'volumePerPlastic'> & { readonly flakes: readonly UnseenFlake[] };
  readonly body: Body;
  readonly share: number;
}

/** What flake does in a cup, before the bait is put together. */
export type UnseenFlake = Omit<FlakeLook, 'seen' | 'contrast'>;

/**
 * What an eye meets of the flake of each cup of a bait (see `seenCoverage`): from the side from which it shows most, past what is in
 * front of it; of cups beside one another each by itself, on its share of the face.
 */
export function withSeenFlake(
  pattern: Pattern,
  cups: readonly FlakedCup[],
  bodyMm: number,
  { shelf, optics }: { readonly shelf: FlakeShelf; readonly optics: OpticalModel },
): readonly (readonly FlakeLook[])[] {
  if (cups.every(({ cup }) => cup.flakes.length === 0)) return cups.map(() => []);
  const met = cups.map((cup) => metIn(cup, shelf));
  const layer = (cup: number, part: number): Layer => ({ ...met[cup]!, thickness: part * bodyMm });
  const seen = PATTERNS[pattern].beside
    ? cups.map(({ share }, cup) =>
        seenCoverage([layer(cup, 1)], optics)[0]!.map((flake) => ({ ...flake, coverage: share * flake.coverage })),
      )
    : fromBestSide(pattern, cups, layer, optics);
  return cups.map(({ cup }, index) =>
    cup.flakes.map((flake, kind): FlakeLook => {
      const { coverage, contrast } = seen[index]![kind]!;
      return { ...flake, seen: coverage, contrast };
    }),
  );
}

function metIn({ cup: { flakes, contents, volumePerPlastic }, body }: FlakedCup, shelf: FlakeShelf): Body {
  const doses = new Map(contents.map(({ material, gramsPerMl }) => [material, gramsPerMl]));
  return {
    ...body,
    flakes: flakes.map(({ material }) =>
      metFlake(required(shelf, material).flake!, required(doses, material) / volumePerPlastic),
    ),
  };
}

function fromBestSide(
  pattern: Pattern,
  cups: readonly FlakedCup[],
  layer: (cup: number, part: number) => Layer,
  optics: OpticalModel,
): readonly (readonly SeenFlake[])[] {
  const runs = PATTERNS[pattern].through(
    cups.map(({ share }) => share),
    MIDDLE,
  );
  const sides = [runs, ...(hasTwoSides(pattern) ? [runs.toReversed()] : [])].map((side) => {
    const seen = seenCoverage(
      side.map(({ cup, part }) => layer(cup, part)),
      optics,
    );
    return cups.map(({ cup }, index) =>
      cup.flakes.map((_, kind) =>
        side.reduce(
          (sum, run, at): SeenFlake => {
            const flake = run.cup === index ? seen[at]![kind]! : undefined;
            return flake ? { coverage: sum.coverage + flake.coverage, contrast: flake.contrast } : sum;
          },
          { coverage: 0, contrast: 0 },
        ),
      ),
    );
  });
  return cups.map(({ cup }, index) =>
    cup.flakes.map((_, kind) =>
      sides.map((side) => side[index]![kind]!).reduce((most, each) => (each.coverage > most.coverage ? each : most)),
    ),
  );
}
