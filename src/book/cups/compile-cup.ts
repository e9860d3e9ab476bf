import { BURNT, type HeatLimit, heatLimit } from '../../cup/heat-limit.ts';
import { type Amounts, type CupState, concentrations, cupVolume, isEmpty, total } from '../../cup/ledger.ts';
import { plasticInCuts } from '../../cup/logged-amount.ts';
import { isHeatProof } from '../../kinds/additive-uses.ts';
import { cupBody } from '../../optics/cup-body.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import { flakeCoverage, flakeSpacing, flakesPerMl, flakesPerMm } from '../../optics/flake.ts';
import { TIERS } from '../../optics/material-constants.ts';
import { hidingThickness } from '../../optics/opacity.ts';
import type { Body } from '../../optics/stack.ts';
import { sharedRange } from '../../units/shared-range.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { BookEye } from '../learning/book-eye.ts';
import { lastCupKey, roundCupKey } from '../learning/cup-keys.ts';
import { howKnown } from '../learning/how-known.ts';
import { judgedFirst } from '../looks/judged-first.ts';
import type { Appearance } from '../model/colours.ts';
import type { Content, Cup, PlasticShare, Round } from '../model/cup.ts';
import type { CupLook, Look } from '../model/looks.ts';
import type { Mold } from '../model/shelf.ts';
import type { Settings, Tier } from '../model.ts';
import { describeChange } from '../recipes/describe-change.ts';
import type { Report } from '../report.ts';
import { checkLoads } from '../shelf/check-loads.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';
import { askedAlone } from './asked-bait.ts';
import { believedAppearance } from './believed-appearance.ts';
import { checkHeat, checkPouring } from './check-heat.ts';
import { checkHeats, checkHeld } from './check-heats.ts';
import { checkSeen, checkUnlogged } from './check-seen.ts';
import type { FilledCup, FilledRound } from './fill-cup.ts';
import type { CupPlace } from './place-in-bait.ts';
import type { UnseenFlake } from './seen-flake.ts';

/** What holds of all cups of a book. */
export interface CupContext {
  readonly shelf: Shelf;
  readonly eye: BookEye;
  readonly settings: Pick<Settings, 'volume' | 'temperature'>;
  readonly report: Report;
}

/** The shelf as the colours need it. */
export type Shelf = ReadonlyMap<string, MaterialCore>;

/** A cup with its colours, and the body that a bait is made of. */
export interface ColouredCup {
  readonly cup: Omit<Cup, 'share' | 'flakes'> & { readonly flakes: readonly UnseenFlake[] };
  readonly body: Body;
}

/** Amounts as a list, in the order of the names, without what is not there. */
export function contentsOf(amounts: Amounts): readonly Content[] {
  return Object.keys(amounts)
    .sort()
    .flatMap((material) => (amounts[material]! > 0 ? [{ material, gramsPerMl: amounts[material]! }] : []));
}

/**
 * Everything that the book says of one cup.
 *
 * @param part the cup's part of the bait's volume, and where it lies in it: see `placeInBait`
 */
export function compileCup(
  filled: FilledCup,
  part: CupPlace & { readonly share: number },
  mold: Pick<Mold, 'bodyMm' | 'thinMm' | 'cavityMl'>,
  { shelf, eye, settings, report }: CupContext,
): ColouredCup {
  const { spec, state, contents } = filled;
  const plasticMl = total(state.plastics);
  const plastics = Object.entries(state.plastics).map(
    ([material, ml]): PlasticShare => ({ material, fraction: ml / plasticMl }),
  );
  const optical = (material: string): MaterialCore => required(shelf, material);
  const body = cupBody({ plastics, contents: contentsOf(contents) }, optical, eye.optics);
  const key = lastCupKey(filled);
  const lookOf = (cup: CupState, thicknessMm = mold.bodyMm, name: string | undefined = key): Appearance =>
    believedAppearance(askedAlone(cup, thicknessMm, name, eye), eye);
  const volumePerPlastic =
    cupVolume({ plastics: {}, materials: contents }, (material) => 1 / optical(material).density) + 1;
  const look = lookOf(state);
  const tried = filled.rounds.map((round) => ({ ...round, seen: judgedFirst(round.seen, mold.bodyMm) }));
  const rounds = compileRounds(
    tried,
    (round, thicknessMm) => lookOf(round.cup, thicknessMm, roundCupKey(filled, round.number)),
    mold.bodyMm,
    (material) => 1 / optical(material).density,
  );
  const plasticIds = plastics.map(({ material }) => material);
  const names = [...Object.keys(contents), ...plasticIds];
  const heatable = Object.keys(contents).filter((id) => !isHeatProof(shelf.get(id)));
  const heat = heatLimit(plasticIds, heatable, (id) => shelf.get(id));
  const ofThisCup = lastCup(filled.rounds);
  const reached = ofThisCup.flatMap((round) => round.heatedTo ?? []);
  const highestReached = reached.length > 0 ? Math.max(...reached) : undefined;
  checkHeat(filled, limitsByStep(filled, heat.limit, shelf), shelf, settings.temperature, report);
  checkHeats(filled, shelf, report);
  checkHeld(filled, settings.temperature, report);
  for (const [index, { seen = [] }] of (spec.fields.log ?? []).entries()) {
    for (const [at, each] of seen.entries())
      checkSeen(each, spec.recipe, [...spec.path, 'log', index, 'seen', at], report);
  }
  checkUnlogged({ ...filled, rounds: tried }, report);
  const plasticDensity = plastics.reduce(
    (sum, { material, fraction }) => sum + fraction * required(shelf, material).density,
    0,
  );
  checkLoads(filled, plasticDensity, shelf, settings, report);
  const working = sharedRange(plasticIds.map((id) => required(shelf, id).working));
  checkPouring(filled, plasticIds, heat.limit, shelf, settings.temperature, report);
  const hidingMm = hidingThickness(body, { optics: eye.optics });
  return {
    body,
    cup: {
      name: spec.name,
      ...defined({ from: spec.from }),
      contents: contentsOf(contents).map((content) =>
        filled.spooned.includes(content.material) ? { ...content, spooned: true as const } : content,
      ),
      plastics,
      startMl: filled.plasticMl,
      ...defined({ startOf: filled.startOf }),
      volumePerPlastic,
      written: filled.written,
      rounds,
      ...(filled.naive === undefined
        ? {}
        : {
            naive: naiveOf(filled.naive, lookOf(naiveCup(filled.naive, plastics), mold.bodyMm, ''), { look, contents }),
          }),
      ...defined({ leftMl: filled.leftMl, highestReached }),
      reheats: filled.heats.heats - 1,
      heats: filled.heats,
      ...heat,
      ...defined({ working }),
      body: look,
      thin: lookOf(state, mold.thinMm),
      between: lookOf(withoutFlake(state, shelf)),
      ...defined({ hidingMm }),
      flakes: flakeLooks(contents, part, mold, volumePerPlastic, shelf),
      tier: tierOf(contents, plastics, shelf),
      known: howKnown(askedAlone(state, mold.bodyMm, key, eye), [state], shelf, eye),
      assumptions: names.flatMap((name) =>
        required(shelf, name).assumptions.map((assumed) => ({ title: required(shelf, name).title, assumed })),
      ),
    },
  };
}

/** A cup without its flake. */
export function withoutFlake(cup: CupState, shelf: Shelf): CupState {
  const plain = Object.entries(cup.materials).filter(([id]) => required(shelf, id).flake === undefined);
  return { plastics: cup.plastics, materials: Object.fromEntries(plain) };
}

/** What the notes add up to, as a cup of a millilitre that nobody has poured. */
function naiveCup(materials: Amounts, plastics: readonly PlasticShare[]): CupState {
  return { plastics: Object.fromEntries(plastics.map(({ material, fraction }) => [material, fraction])), materials };
}

/** The rounds since the last new cup. */
function lastCup(rounds: readonly FilledRound[]): readonly FilledRound[] {
  return rounds.slice(
    Math.max(
      0,
      rounds.findLastIndex(({ pouredAway }) => pouredAway !== undefined),
    ),
  );
}

/** How hot the cup may get that each step of a file was done to: of one that was given up, by all that went into that. */
function limitsByStep(
  { rounds, places }: FilledCup,
  limit: HeatLimit | undefined,
  shelf: Shelf,
): (step: number) => HeatLimit | undefined {
  return (step) => {
    const given = rounds.find(({ pouredAway, first }) => pouredAway && places[first]! > step);
    const before = given && rounds[given.number - 2];
    if (!before) return limit;
    const { plastics, materials } = before.cup;
    return heatLimit(Object.keys(plastics), Object.keys(materials), (id) => shelf.get(id)).limit;
  };
}

function compileRounds(
  rounds: readonly FilledRound[],
  lookOf: (round: FilledRound, thicknessMm: number) => Appearance,
  bodyMm: number,
  volumePerGram: (material: string) => number,
): Round[] {
  let before: { look: Appearance; contents: Amounts } | undefined;
  return rounds.map((filled): Round => {
    const { first: _, looked: __, pouredAway, ...round } = filled;
    const { cup, left, seen, heatedTo = 0, heats, newHeats } = round;
    const contents = concentrations(cup);
    const look = lookOf(filled, bodyMm);
    const change = before && describeChange(before, { look, contents });
    before = { look, contents };
    return {
      ...round,
      // The melt is none again.
      reheated: newHeats > (newHeats === heats ? 1 : 0),
      volumeMl: cupVolume(cup, volumePerGram),
      leftMl: cupVolume(left, volumePerGram),
      look,
      ...defined({
        newCup: pouredAway && {
          plasticMl: total(cup.plastics) - round.plasticAddedMl - plasticInCuts(round.added),
          pouredAway,
          pouredAwayMl: isEmpty(pouredAway) ? 0 : cupVolume(pouredAway, volumePerGram),
        },
        burnt: heatedTo > BURNT ? (true as const) : undefined,
        change,
      }),
      seen: seen.map((each): CupLook => {
        const { thicknessMm = bodyMm } = each;
        const predicted = thicknessMm === bodyMm ? undefined : lookOf(filled, thicknessMm);
        return { ...each, ...defined({ predicted, missedBy: missedBy(each, predicted ?? look) }) };
      }),
    };
  });
}

function missedBy({ overWhite, overBlack }: Look, made: Appearance): CupLook['missedBy'] {
  const missed = defined({
    overWhite: overWhite && deltaE00(overWhite.lab, made.overWhite.lab),
    overBlack: overBlack && deltaE00(overBlack.lab, made.overBlack.lab),
  });
  return Object.keys(missed).length === 0 ? undefined : missed;
}

function naiveOf(
  naive: Amounts,
  look: Appearance,
  actual: { look: Appearance; contents: Amounts },
): NonNullable<Cup['naive']> {
  const change = describeChange(actual, { look, contents: naive });
  return { contents: contentsOf(naive), deltaE: change.deltaE, words: change.words };
}

/** The flakes of a cup, and what of them is in its part of a bait. */
function flakeLooks(
  contents: Amounts,
  { face, depth, share }: CupPlace & { readonly share: number },
  { bodyMm, cavityMl }: Pick<Mold, 'bodyMm' | 'cavityMl'>,
  volumePerPlastic: number,
  shelf: Shelf,
): readonly UnseenFlake[] {
  return contentsOf(contents).flatMap(({ material, gramsPerMl }): UnseenFlake[] => {
    const { flake } = required(shelf, material);
    if (!flake) return [];
    // Flakes are spread through the whole cup, which the materials make a little larger than its plastic.
    const perMl = flakesPerMl(gramsPerMl / volumePerPlastic, flake);
    const spread = [{ perMm: flakesPerMm(gramsPerMl / volumePerPlastic, flake) }];
    return [
      {
        material,
        hex: flake.colour,
        sizeMm: flake.acrossMm,
        outline: flake.outline,
        ...defined({ longMm: flake.longMm }),
        finish: flake.finish,
        flakesPerMl: perMl,
        perBait: perMl * cavityMl * share,
        spacingMm: flakeSpacing(perMl) ?? 0,
        coverage: face * flakeCoverage(spread, depth * bodyMm),
      },
    ];
  });
}

/** The worst tier of what colours the cup; of a cup with nothing in it that does, its plastic's. */
function tierOf(contents: Amounts, plastics: readonly PlasticShare[], shelf: Shelf): Tier {
  const colouring = Object.keys(contents).filter((material) => {
    const { constants, flake } = required(shelf, material);
    return contents[material]! > 0 && (constants !== undefined || flake !== undefined);
  });
  const counted = colouring.length > 0 ? colouring : plastics.map(({ material }) => material);
  return TIERS[Math.max(...counted.map((material) => TIERS.indexOf(required(shelf, material).tier)))]!;
}
