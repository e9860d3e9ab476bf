import { type CupState, scaleAmounts } from '../cup/ledger.ts';
import type { Observation } from '../matching/correct-model.ts';
import { correctModel } from '../matching/correct-model.ts';
import { baseOfCup } from '../matching/cup-model.ts';
import type { MatchMaterial } from '../matching/match-material.ts';
import { nextAddition } from '../matching/next-addition.ts';
import type { SeenViews, TargetPart } from '../matching/target-part.ts';
import { isNoVerdict, thresholdsFor, type Verdict, verdict } from '../matching/verdict.ts';
import { bodyViews, type TwoViews } from '../optics/cup-body.ts';
import { hexFromLab, labFromHex } from '../optics/display.ts';
import type {
  Cup,
  CupMatch,
  Lab,
  MatchedRound,
  Mold,
  Recipe,
  RecipeMatch,
  Round,
  Seen,
  Settings,
  Target,
} from './model.ts';

/** What a match is worked out with. */
export interface MatchContext {
  readonly materials: readonly MatchMaterial[];
  readonly settings: Settings;
  readonly molds: ReadonlyMap<string, Pick<Mold, 'bodyMm'>>;
}

/** The part of a target that a cup is for: the one of its name, or the only one where the cup is the only one. */
export function partFor(target: Pick<Target, 'parts'>, cup: string, cups: number): TargetPart | undefined {
  const part =
    target.parts.find(({ name }) => name === cup) ??
    (target.parts.length === 1 && cups === 1 ? target.parts[0] : undefined);
  return (
    part && {
      name: part.name,
      overWhite: part.overWhite.lab,
      ...(part.overBlack === undefined ? {} : { overBlack: part.overBlack.lab }),
      thicknessMm: part.thicknessMm,
    }
  );
}

/** What the log of a cup leaves, g and ml; undefined where all of it was poured. */
export function cupLeft(cup: Cup): CupState | undefined {
  const round = cup.rounds.at(-1);
  if (!round || !(round.volumeMl > 0) || !(round.leftMl > 1e-6)) return undefined;
  return cupState(cup, (round.plasticMl * round.leftMl) / round.volumeMl, round.contents);
}

/** A cup of so many ml of plastic, as it is after its last round. */
export function cupState(cup: Pick<Cup, 'plastics'>, plasticMl: number, contents: Cup['contents']): CupState {
  return {
    plastics: Object.fromEntries(cup.plastics.map(({ material, fraction }) => [material, fraction * plasticMl])),
    materials: scaleAmounts(
      Object.fromEntries(contents.map(({ material, gramsPerMl }) => [material, gramsPerMl])),
      plasticMl,
    ),
  };
}

/** The rounds of a cup in which a colour was seen, as matching learns from them. */
export function observationsOf(cup: Cup, thicknessMm: number): readonly Observation[] {
  return cup.rounds.flatMap((round): Observation[] => {
    const seen = seenViews(round);
    return seen ? [{ cup: cupState(cup, round.plasticMl, round.contents), thicknessMm, seen }] : [];
  });
}

/** What was seen of a round, in CIELAB; undefined where no colour was noted. */
export function seenViews({ seen }: Pick<Round, 'seen'>): SeenViews | undefined {
  if (seen?.overWhite === undefined && seen?.overBlack === undefined) return undefined;
  return {
    ...(seen.overWhite === undefined ? {} : { overWhite: labFromHex(seen.overWhite) }),
    ...(seen.overBlack === undefined ? {} : { overBlack: labFromHex(seen.overBlack) }),
  };
}

/** A recipe's cups beside the parts of its target, round by round; undefined where no part is for any of its cups. */
export function matchRounds(
  recipe: Pick<Recipe, 'cups' | 'mold'>,
  target: Omit<Target, 'recipes'>,
  context: MatchContext,
): RecipeMatch | undefined {
  const bodyMm = context.molds.get(recipe.mold)!.bodyMm;
  const cups = recipe.cups.flatMap((cup): CupMatch[] => {
    const part = partFor(target, cup.name, recipe.cups.length);
    return part ? [matchCup(cup, part, bodyMm, target.tolerance, context)] : [];
  });
  return cups.length > 0 ? { target: target.id, tolerance: target.tolerance, cups } : undefined;
}

function matchCup(
  cup: Cup,
  part: TargetPart,
  bodyMm: number,
  tolerance: number,
  { materials, settings }: MatchContext,
): CupMatch {
  const shelf = new Map(materials.map((material) => [material.id, material]));
  const byName = (name: string): MatchMaterial => shelf.get(name)!;
  const observations = observationsOf(cup, bodyMm);
  const { strengths } = correctModel(observations, byName);
  // Seen at another thickness than the target: moved by what the corrected model says the thickness makes.
  const moved = Math.abs(part.thicknessMm - bodyMm) > 0.01;
  const atThickness = (state: CupState, thicknessMm: number): TwoViews => {
    const base = baseOfCup(state, (name) => withStrength(byName(name), strengths[name]));
    return bodyViews({ ...base.mix, flakes: base.flakes }, thicknessMm);
  };
  const asTarget = (seen: SeenViews, state: CupState): SeenViews => {
    if (!moved) return seen;
    const [here, there] = [atThickness(state, bodyMm), atThickness(state, part.thicknessMm)];
    const shift = (lab: Lab | undefined, from: Lab, to: Lab): Lab | undefined =>
      lab && {
        L: Math.min(100, Math.max(0, lab.L + to.L - from.L)),
        a: lab.a + to.a - from.a,
        b: lab.b + to.b - from.b,
      };
    const overWhite = shift(seen.overWhite, here.overWhite, there.overWhite);
    const overBlack = shift(seen.overBlack, here.overBlack, there.overBlack);
    return { ...(overWhite && { overWhite }), ...(overBlack && { overBlack }) };
  };
  const matched = (number: number, state: CupState, seen: SeenViews | undefined): MatchedRound[] => {
    const views = seen ? asTarget(seen, state) : atThickness(state, part.thicknessMm);
    const found = verdict(views, part, thresholdsFor(tolerance));
    if (isNoVerdict(found)) return [];
    return [
      {
        number,
        basis: seen ? 'seen' : 'predicted',
        ...(moved ? { moved } : {}),
        ...(views.overWhite === undefined ? {} : { overWhite: stated(views.overWhite) }),
        ...(views.overBlack === undefined ? {} : { overBlack: stated(views.overBlack) }),
        verdict: keptVerdict(found),
      },
    ];
  };
  const rounds =
    cup.rounds.length > 0
      ? cup.rounds.flatMap((round) =>
          matched(round.number, cupState(cup, round.plasticMl, round.contents), seenViews(round)),
        )
      : matched(1, cupState(cup, 100, cup.contents), undefined);
  const last = rounds.at(-1);
  const left = cupLeft(cup);
  if (!last || last.verdict.within || !left) return { cup: cup.name, part: part.name, rounds };
  const seen = seenViews(cup.rounds.at(-1)!);
  const next = nextAddition({
    cup: left,
    target: part,
    shelf: materials,
    bench: settings,
    tolerance,
    rounds: observations,
    ...(seen ? { seen: asTarget(seen, left) } : {}),
    startMl: Math.round(cup.rounds[0]!.plasticMl),
    limits: { mayThin: true, roomMl: settings.cupMl * settings.fill },
  });
  const { advice, sentence, proposals, missing } = next;
  return advice === 'fault' || advice === 'leave'
    ? { cup: cup.name, part: part.name, rounds }
    : { cup: cup.name, part: part.name, rounds, next: rounded({ advice, sentence, proposals, missing }) };
}

function withStrength(material: MatchMaterial, factor = 1): MatchMaterial {
  const { constants } = material;
  if (!constants || factor === 1) return material;
  const scaled = (values: ArrayLike<number>): Float64Array => Float64Array.from(values, (value) => factor * value);
  return {
    ...material,
    constants: { absorption: scaled(constants.absorption), scattering: scaled(constants.scattering) },
  };
}

function stated(lab: Lab): Seen {
  return { lab: rounded(lab), ...hexFromLab(lab) };
}

function keptVerdict(found: Verdict): Verdict {
  return rounded(found);
}

/** A plain value with its numbers to four decimals: more than any of them deserves. */
function rounded<T>(value: T): T {
  if (typeof value === 'number') return Number(value.toFixed(4)) as T;
  if (Array.isArray(value)) return value.map(rounded) as T;
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, rounded(part)])) as T;
  }
  return value;
}
