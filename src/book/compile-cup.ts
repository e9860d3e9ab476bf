import { type Amounts, concentrations, cupVolume, total } from '../cup/ledger.ts';
import { cupBody } from '../optics/cup-body.ts';
import { deltaE00 } from '../optics/delta-e00.ts';
import { flakeCoverage, flakeSpacing, flakesPerMl, flakesPerMm } from '../optics/flake.ts';
import { hidingThickness } from '../optics/opacity.ts';
import type { Body } from '../optics/stack.ts';
import { fahrenheit } from '../units/convert.ts';
import { formatDecimal } from '../units/format-quantity.ts';
import type { Unit } from '../units/unit.ts';
import { usualVolume } from '../units/usual-volume.ts';
import type { VolumeUnit } from '../units/volume-text.ts';
import { asWritten } from './as-written.ts';
import { checkSeen } from './check-seen.ts';
import type { MaterialCore } from './compile-material.ts';
import { describeChange } from './describe-change.ts';
import type { FilledCup, FilledRound } from './fill-cup.ts';
import { lookOf, withoutFlake } from './looks.ts';
import type { Content, Cup, FlakeLook, Look, Mold, PlasticShare, Round, Tier } from './model.ts';
import { photoOf } from './photo-of.ts';
import type { CupPlace } from './place-in-bait.ts';
import type { Report } from './report.ts';
import { seenByDaylight } from './seen-colour.ts';

/** The shelf as the colours need it. */
export type Shelf = ReadonlyMap<string, MaterialCore>;

/** A cup with its colours, and the body that a bait is made of. */
export interface ColouredCup {
  readonly cup: Omit<Cup, 'share'>;
  readonly body: Body;
}

const TIERS: readonly Tier[] = ['measured', 'photographed', 'estimated'];

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
  shelf: Shelf,
  volume: VolumeUnit,
  report: Report,
): ColouredCup {
  const { spec, state, contents } = filled;
  const plasticMl = total(state.plastics);
  const plastics = Object.entries(state.plastics).map(
    ([material, ml]): PlasticShare => ({ material, fraction: ml / plasticMl }),
  );
  const optical = (material: string): MaterialCore => shelf.get(material)!;
  const bodyOf = (amounts: Amounts): Body => cupBody({ plastics, contents: contentsOf(amounts) }, optical);
  const body = bodyOf(contents);
  const volumePerPlastic =
    cupVolume({ plastics: {}, materials: contents }, (material) => 1 / optical(material).density) + 1;
  const look = lookOf(body, mold.bodyMm);
  const rounds = compileRounds(filled.rounds, bodyOf, mold.bodyMm, (material) => 1 / optical(material).density);
  const names = [...Object.keys(contents), ...plastics.map(({ material }) => material)];
  const limit = limitOf(names, shelf);
  const reached = filled.rounds.flatMap((round) => round.heatedTo ?? []);
  const highestReached = reached.length > 0 ? Math.max(...reached) : undefined;
  checkHeat(filled, heatedAtMost(limit, plastics, shelf), report);
  for (const [index, { seen = {} }] of (spec.fields.log ?? []).entries())
    checkSeen(seen, spec.recipe, [...spec.path, 'log', index, 'seen'], report);
  checkLoads(filled, shelf, volume, report);
  const working = workingOf(plastics, shelf);
  const hidingMm = hidingThickness(body);
  return {
    body,
    cup: {
      name: spec.name,
      ...(spec.from === undefined ? {} : { from: spec.from }),
      contents: contentsOf(contents),
      plastics,
      startMl: filled.plasticMl,
      volumePerPlastic,
      written: filled.written,
      rounds,
      ...(filled.naive === undefined ? {} : { naive: naiveOf(filled.naive, bodyOf, mold.bodyMm, { look, contents }) }),
      ...(filled.leftMl === undefined ? {} : { leftMl: filled.leftMl }),
      ...(highestReached === undefined ? {} : { highestReached }),
      reheats: filled.rounds.filter((round) => round.reheated).length,
      ...(limit === undefined ? {} : { limit }),
      limitUnknown: names.filter((name) => shelf.get(name)!.highest === undefined),
      ...(working === undefined ? {} : { working }),
      body: look,
      thin: lookOf(body, mold.thinMm),
      between: lookOf(withoutFlake(body), mold.bodyMm),
      ...(hidingMm === undefined ? {} : { hidingMm }),
      flakes: flakeLooks(contents, part, mold, volumePerPlastic, shelf),
      tier: tierOf(contents, plastics, shelf),
      assumptions: names.flatMap((name) =>
        shelf.get(name)!.assumptions.map((assumed) => `${shelf.get(name)!.title}: ${assumed}`),
      ),
    },
  };
}

function compileRounds(
  rounds: readonly FilledRound[],
  bodyOf: (amounts: Amounts) => Body,
  thickness: number,
  volumePerGram: (material: string) => number,
): Round[] {
  let before: { look: Look; contents: Amounts } | undefined;
  return rounds.map((round, index): Round => {
    const contents = concentrations(round.before);
    const look = lookOf(bodyOf(contents), thickness);
    const change = before && describeChange(before, { look, contents });
    before = { look, contents };
    const { seen } = round;
    return {
      number: index + 1,
      added: round.added,
      plasticAddedMl: round.plasticAddedMl,
      pouredMl: round.pouredMl,
      ...(round.heatedTo === undefined ? {} : { heatedTo: round.heatedTo }),
      reheated: round.reheated,
      ...(round.note === undefined ? {} : { note: round.note }),
      ...(seen === undefined ? {} : seenOf(seen, look)),
      contents: contentsOf(contents),
      plasticMl: total(round.before.plastics),
      volumeMl: cupVolume(round.before, volumePerGram),
      leftMl: cupVolume(round.after, volumePerGram),
      look,
      ...(change === undefined ? {} : { change }),
    };
  });
}

type SeenFields = NonNullable<FilledRound['seen']>;

function seenOf(seen: SeenFields, look: Look): Pick<Round, 'seen' | 'seenDeltaE'> {
  const { 'over-white': white, 'over-black': black, note, photo } = seen;
  const overWhite = white === undefined ? undefined : seenByDaylight(white);
  const overBlack = black === undefined ? undefined : seenByDaylight(black);
  return {
    seen: {
      ...(overWhite === undefined ? {} : { overWhite }),
      ...(overBlack === undefined ? {} : { overBlack }),
      ...(note === undefined ? {} : { note }),
      ...(photo === undefined ? {} : { photo: photoOf(photo) }),
    },
    seenDeltaE: {
      ...(overWhite === undefined ? {} : { overWhite: deltaE00(overWhite.lab, look.overWhite.lab) }),
      ...(overBlack === undefined ? {} : { overBlack: deltaE00(overBlack.lab, look.overBlack.lab) }),
    },
  };
}

function naiveOf(
  naive: Amounts,
  bodyOf: (amounts: Amounts) => Body,
  thickness: number,
  actual: { look: Look; contents: Amounts },
): NonNullable<Cup['naive']> {
  const look = lookOf(bodyOf(naive), thickness);
  const change = describeChange(actual, { look, contents: naive });
  return { contents: contentsOf(naive), deltaE: change.deltaE, words: change.words };
}

function limitOf(names: readonly string[], shelf: Shelf): Cup['limit'] {
  let limit: Cup['limit'];
  for (const name of names) {
    const { highest } = shelf.get(name)!;
    if (highest !== undefined && (limit === undefined || highest < limit.celsius))
      limit = { celsius: highest, material: name };
  }
  return limit;
}

function workingOf(plastics: readonly PlasticShare[], shelf: Shelf): Cup['working'] {
  const ranges = plastics.flatMap(({ material }) => shelf.get(material)!.working ?? []);
  if (ranges.length === 0) return undefined;
  const from = Math.max(...ranges.map((range) => range.from));
  const to = Math.min(...ranges.map((range) => range.to));
  return from <= to ? { from, to } : undefined;
}

/** A temperature that a cup may be heated to, °C, and why. */
interface MostHeat {
  readonly celsius: number;
  readonly why: string;
}

/** The limit of a cup, or the top of a pouring range where that is lower and its plastic has no highest temperature on the shelf. */
function heatedAtMost(limit: Cup['limit'], plastics: readonly PlasticShare[], shelf: Shelf): MostHeat | undefined {
  const tops = plastics.flatMap(({ material }): readonly MostHeat[] => {
    const { title, working, highest } = shelf.get(material)!;
    if (working === undefined || highest !== undefined) return [];
    return [{ celsius: working.to, why: `the top of the pouring range of ${title}, which has no \`highest\`` }];
  });
  const stated = limit && { celsius: limit.celsius, why: `the highest for ${shelf.get(limit.material)!.title}` };
  return [...(stated ? [stated] : []), ...tops].sort((one, other) => one.celsius - other.celsius)[0];
}

function checkHeat(filled: FilledCup, most: MostHeat | undefined, report: Report): void {
  const { spec } = filled;
  for (const [index, step] of (spec.fields.log ?? []).entries()) {
    if (step.heat === undefined || most === undefined || step.heat <= most.celsius + 0.01) continue;
    const path = [...spec.path, 'log', index, 'heat'];
    const { text, unit } = asWritten(spec.recipe, path, { amount: step.heat, unit: '°C' });
    report.add('recipe/too-hot', spec.recipe, path, {
      found: text,
      expected: `at most ${noHotterThan(most.celsius, unit)}, ${most.why}`,
      why: 'overheated plastic gives off hydrogen chloride, and flake scorches',
      fix: 'correct the temperature, or note what happened and keep the cup cooler next time',
    });
  }
}

// A limit of 340 °F is one of 339.99999999999994 by its degrees Celsius.
const DEGREE_ROUNDING = 1e-6;

/** A temperature in whole degrees of a unit, rounded down. */
function noHotterThan(celsius: number, unit: Unit): string {
  return `${Math.floor((unit === '°F' ? fahrenheit(celsius) : celsius) + DEGREE_ROUNDING)} ${unit}`;
}

/** Reports a load above the most that a material's file allows, in what the book states doses for. */
function checkLoads(filled: FilledCup, shelf: Shelf, volume: VolumeUnit, report: Report): void {
  const { spec, contents } = filled;
  const usual = usualVolume(volume);
  const load = (gramsPerMl: number): string => `${formatDecimal(gramsPerMl * usual.ml)} g`;
  for (const [id, gramsPerMl] of Object.entries(contents)) {
    const { most, title } = shelf.get(id)!;
    if (most === undefined || gramsPerMl <= most * 1.001) continue;
    const { add = {}, set = {}, log = [] } = spec.fields;
    const step = log.findLastIndex((entry) => entry.add !== undefined && Object.hasOwn(entry.add, id));
    const path = Object.hasOwn(add, id)
      ? ['add', id]
      : Object.hasOwn(set, id)
        ? ['set', id]
        : step >= 0
          ? ['log', step, 'add', id]
          : [];
    report.add('recipe/overloaded', spec.recipe, [...spec.path, ...path], {
      found: `${load(gramsPerMl)} of ${title} in ${usual.text}`,
      expected: `at most ${load(most)}, as its file says`,
      why: 'more weakens the bait, or does not stay in it',
      fix: 'use less, or correct `most` in its file',
    });
  }
}

/** The flakes of a cup, and what of them is in its part of a bait. */
function flakeLooks(
  contents: Amounts,
  { face, depth, share }: CupPlace & { readonly share: number },
  { bodyMm, cavityMl }: Pick<Mold, 'bodyMm' | 'cavityMl'>,
  volumePerPlastic: number,
  shelf: Shelf,
): readonly FlakeLook[] {
  return contentsOf(contents).flatMap(({ material, gramsPerMl }): FlakeLook[] => {
    const { flake } = shelf.get(material)!;
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
        ...(flake.longMm === undefined ? {} : { longMm: flake.longMm }),
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
    const { constants, flake } = shelf.get(material)!;
    return contents[material]! > 0 && (constants !== undefined || flake !== undefined);
  });
  const counted = colouring.length > 0 ? colouring : plastics.map(({ material }) => material);
  return TIERS[Math.max(...counted.map((material) => TIERS.indexOf(shelf.get(material)!.tier)))]!;
}
