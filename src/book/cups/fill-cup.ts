import { CupLog } from '../../cup/cup-log.ts';
import { type Cut, partsOfCut, withoutMaterial } from '../../cup/cut.ts';
import type { CupHeats, HeatTurn } from '../../cup/heats.ts';
import {
  type Amounts,
  amountOf,
  type CupState,
  concentrations,
  cupVolume,
  EMPTY_CUP,
  isEmpty,
  scaleCup,
  total,
  withAdded,
} from '../../cup/ledger.ts';
import type { LogRound } from '../../cup/log-round.ts';
import { type LoggedAmount, stepOfAmount } from '../../cup/logged-amount.ts';
import type { DiagnosticCode } from '../../diagnostics/catalogue.ts';
import type { FieldPath } from '../../recipe/field-path.ts';
import type { PlasticAmount } from '../../recipe/plastic-field.ts';
import { CHIP_MM } from '../../tables/material-defaults.ts';
import { gramsOfDose } from '../../units/dose.ts';
import { formatDose } from '../../units/format-quantity.ts';
import type { Quantity, Rate } from '../../units/quantity.ts';
import { UNITS } from '../../units/unit.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { compileLook, type LookFields } from '../looks/compile-look.ts';
import type { Look } from '../model/looks.ts';
import { placeOfEnd } from '../read/place-of-end.ts';
import type { Finding, Report } from '../report.ts';
import { asWritten } from './as-written.ts';
import type { ChipSpec } from './chip-spec.ts';
import {
  ADD_AND_LOG,
  ADDED_TO_NOTHING,
  noDrops,
  noPlastic,
  nothingToChange,
  notInParent,
  overPoured,
  PLASTIC_UNNAMED,
} from './cup-findings.ts';
import { type CupShelf, isNoName, nameFault, shelfNames, type Wanted } from './cup-shelf.ts';
import type { CupSpec } from './cup-specs.ts';

/** A round as the ledger keeps it. */
export type FilledRound = LogRound<Look>;

/** A cup with its ledger kept: of a recipe, or of a chip. */
export interface FilledCup<Spec extends CupSpec | ChipSpec = CupSpec> {
  readonly spec: Spec;
  /** Cup that is left; of an empty one, the last that was not. */
  readonly state: CupState;
  /** Before the first round. */
  readonly start: CupState;
  /** Grams of each material per millilitre of plastic. */
  readonly contents: Amounts;
  /** Liquids of which the last dose is a volume: spooned, not counted in drops. */
  readonly spooned: readonly string[];
  /** Plastic that the recipe starts with, ml: what a cup derived from this one starts with, if it does not say. */
  readonly plasticMl: number;
  /** The cup whose file states that amount, where this one's does not. */
  readonly startOf?: { readonly recipe: string; readonly cup: string };
  readonly written: readonly { readonly material: string; readonly dose: string }[];
  readonly rounds: readonly FilledRound[];
  readonly heats: CupHeats;
  /** Each time that it was heated again, by steps of the file. */
  readonly turns: readonly HeatTurn[];
  /** Which step of the file a step of the rounds is in. */
  readonly places: readonly number[];
  /** Only with a log: as if nothing had been poured. */
  readonly naive?: Amounts;
  readonly leftMl?: number;
}

/** Keeps the ledger of one cup. Faults go to the report; undefined where the cup could not be filled. */
export function fillCup<Spec extends CupSpec | ChipSpec>(
  spec: Spec,
  parent: FilledCup | undefined,
  shelf: CupShelf,
  report: Report,
): FilledCup<Spec> | undefined {
  const filling = new Filling(spec, shelf, report);
  const { fields, path } = spec;
  if (fields.log && fields.add && !spec.from) {
    filling.fault('recipe/add-and-log', [...path, 'log'], ADD_AND_LOG, 'key');
  }
  filling.start(parent);
  filling.change(parent);
  const written = filling.add(fields.add ?? {}, [...path, 'add']).map(({ material, dose }) => ({ material, dose }));
  const { state: start } = filling;
  const log = filling.log();
  if (!filling.sound) return undefined;
  const { rounds, last: state, left, naive, heats, turns } = log.history();
  return {
    spec,
    state,
    start,
    contents: concentrations(state),
    spooned: [...filling.spooned],
    plasticMl: filling.plasticMl,
    ...defined({ startOf: filling.startOf }),
    written,
    rounds,
    heats,
    turns: turns.map(({ step, ...turn }) => ({ ...turn, step: filling.places[step]! })),
    places: filling.places,
    ...(fields.log ? { naive: concentrations(naive), leftMl: cupVolume(left, filling.volumePerGram) } : {}),
  };
}

type Log = NonNullable<CupSpec['fields']['log']>;

/** A cup while it is being filled. */
class Filling {
  state: CupState = EMPTY_CUP;
  plasticMl = 0;
  startOf: FilledCup['startOf'];
  sound = true;
  readonly spooned = new Set<string>();
  /** Which step of the file each step of the log is in. */
  readonly places: number[] = [];
  readonly volumePerGram = (material: string): number => 1 / required(this.shelf.materials, material).density;
  private readonly spec: CupSpec | ChipSpec;
  private readonly shelf: CupShelf;
  private readonly report: Report;

  constructor(spec: CupSpec | ChipSpec, shelf: CupShelf, report: Report) {
    this.spec = spec;
    this.shelf = shelf;
    this.report = report;
  }

  fault(...[code, path, finding, part]: [DiagnosticCode, FieldPath, Finding, ('key' | 'value')?]): void {
    this.sound = false;
    this.report.add(code, this.spec.recipe, path, finding, part);
  }

  start(parent: FilledCup | undefined): void {
    const { fields, path } = this.spec;
    if (this.spec.from && !parent) {
      this.sound = false;
      return;
    }
    const plastics = this.plastics(fields.plastic ?? [], [...path, 'plastic']);
    const ml = total(plastics);
    if (parent) {
      for (const id of parent.spooned) this.spooned.add(id);
      this.plasticMl = ml || parent.plasticMl;
      if (ml === 0) this.startOf = parent.startOf ?? { recipe: parent.spec.recipe.id, cup: parent.spec.name };
      const scaled = scaleCup(parent.state, this.plasticMl / total(parent.state.plastics));
      this.state =
        ml > 0 && Object.keys(plastics)[0] !== undefined && this.namesPlastic() ? { ...scaled, plastics } : scaled;
    } else if (ml > 0) {
      this.plasticMl = ml;
      this.state = { plastics, materials: {} };
    } else if (fields.plastic === undefined) {
      this.fault('recipe/no-plastic', path, noPlastic(this.spec.name), 'key');
    }
  }

  /** Whether the recipe names its plastic, so that it replaces the parent's rather than only setting the amount. */
  private namesPlastic(): boolean {
    return (this.spec.fields.plastic ?? []).some((amount) => amount.plastic !== undefined);
  }

  private plastics(amounts: readonly PlasticAmount[], path: FieldPath): Amounts {
    const plastics: Record<string, number> = {};
    for (const [index, amount] of amounts.entries()) {
      const id = amount.plastic ?? this.shelf.plastic;
      if (id === undefined && shelfNames(this.shelf, 'plastic').length === 0) {
        // The shelf without plastic is reported once, for the book.
        this.sound = false;
      } else if (id === undefined) {
        this.fault('recipe/unknown-plastic', path, PLASTIC_UNNAMED);
      } else if (this.known(id, [...path, index], 'plastic')) plastics[id] = amountOf(plastics, id) + amount.ml;
    }
    return plastics;
  }

  private known(id: string, path: FieldPath, wanted: Wanted, part: 'key' | 'value' = 'value'): boolean {
    const fault = nameFault(this.shelf, id, wanted);
    if (fault === undefined) return true;
    if (fault === 'faulty') this.sound = false;
    else {
      const place = wanted === 'plastic' ? placeOfEnd(this.spec.recipe, path, id) : undefined;
      this.fault(fault.code, path, { ...fault.finding, ...place }, part);
    }
    return false;
  }

  /** Leaves out, and replaces, what a derived cup has otherwise than its parent. */
  change(parent: FilledCup | undefined): void {
    const { fields, path } = this.spec;
    if (!parent) {
      for (const name of ['set', 'without'] as const) {
        if (fields[name] !== undefined && !this.spec.from) {
          this.fault('recipe/not-in-cup', [...path, name], nothingToChange(name), 'key');
        }
      }
      return;
    }
    const cutOf = (name: string): Cut | undefined => this.shelf.materials.get(name)?.cut;
    const drop = (id: string, field: 'set' | 'without', at: FieldPath): void => {
      const part = field === 'set' ? 'key' : 'value';
      const meant = cutOf(id)?.of ?? id;
      if (Object.hasOwn(this.state.materials, meant)) this.state = withoutMaterial(this.state, meant, cutOf);
      else if (isNoName(this.shelf, id) ? field === 'without' : this.known(id, at, 'material', part)) {
        this.fault(
          'recipe/not-in-cup',
          at,
          notInParent(id, field, this.spec.from!, Object.keys(this.state.materials)),
          part,
        );
      }
    };
    for (const [index, id] of (fields.without ?? []).entries()) drop(id, 'without', [...path, 'without', index]);
    for (const id of Object.keys(fields.set ?? {})) drop(id, 'set', [...path, 'set', id]);
    this.add(fields.set ?? {}, [...path, 'set']);
  }

  /** Adds doses to the cup. */
  add(doses: Readonly<Record<string, Quantity | Rate>>, path: FieldPath): readonly LoggedAmount[] {
    const added = this.doses(doses, path, this.state);
    this.state = added.reduce((cup, amount) => withAdded(cup, stepOfAmount(amount)), this.state);
    return added;
  }

  /** Grams of doses, all counted against the plastic that is in the cup. */
  private doses(
    doses: Readonly<Record<string, Quantity | Rate>>,
    path: FieldPath,
    { plastics }: CupState,
  ): readonly LoggedAmount[] {
    const plasticMl = total(plastics);
    let plasticGrams = 0;
    for (const id in plastics) plasticGrams += plastics[id]! * required(this.shelf.materials, id).density;
    const added: LoggedAmount[] = [];
    for (const [id, dose] of Object.entries(doses)) {
      if (!this.known(id, [...path, id], 'material', 'key')) continue;
      const material = required(this.shelf.materials, id);
      const { unit } = 'per' in dose ? dose.quantity : dose;
      if (UNITS[unit].dimension === 'drop' && material.gramsPerDrop === undefined) {
        this.fault('recipe/wrong-measure', [...path, id], noDrops(material, dose));
        continue;
      }
      const grams = gramsOfDose(
        dose,
        { gramsPerMl: material.gramsPerMl, gramsPerDrop: material.gramsPerDrop ?? 0 },
        { ml: plasticMl, grams: plasticGrams },
      );
      const { cut } = material;
      if (UNITS[unit].dimension === 'volume' && material.gramsPerDrop !== undefined) this.spooned.add(id);
      else this.spooned.delete(id);
      added.push({ material: id, dose: formatDose(dose), grams, ...(cut && { parts: partsOfCut(cut, grams) }) });
    }
    return added;
  }

  /** Reads the log: turns names and doses into steps, and says what cannot be done. */
  log(): CupLog<Look> {
    const log = new CupLog<Look>(this.state, this.volumePerGram);
    for (const [index, step] of (this.spec.fields.log ?? []).entries())
      this.step(
        step,
        [...this.spec.path, 'log', index],
        (each) => {
          this.places.push(index);
          return log.take(each);
        },
        log,
      );
    if ('seen' in this.spec && this.spec.seen) this.see(this.spec.seen, (each) => log.take(each));
    return log;
  }

  private see(looks: readonly LookFields[], take: CupLog<Look>['take']): void {
    const isChip = this.spec.recipe.kind === 'chip';
    take({ kind: 'see', looks: looks.map((look) => compileLook(isChip ? { thickness: CHIP_MM, ...look } : look)) });
  }

  /** All that one step of a file says: what it is heated again for goes in with that heat, and its peak belongs to the round of the rest. */
  private step(
    { 'new-cup': begun, plastic, add, pour, seen, heat, held, reheat, note }: Log[number],
    at: FieldPath,
    take: CupLog<Look>['take'],
    log: CupLog<Look>,
  ): void {
    if (begun) {
      const plastics = this.plastics(begun, [...at, 'new-cup']);
      this.plasticMl = total(plastics);
      take({ kind: 'new-cup', plastics });
    }
    if (reheat) take({ kind: 'heat', again: 1 });
    if (plastic) {
      for (const [material, ml] of Object.entries(this.plastics([plastic], [...at, 'plastic'])))
        take({ kind: 'plastic', material, ml });
    }
    if (add) {
      const isNothing = Object.keys(add).length === 0;
      if (!isNothing && isEmpty(log.cup) && this.sound)
        this.fault('recipe/empty-cup', [...at, 'add'], ADDED_TO_NOTHING, 'key');
      take({ kind: 'add', amounts: this.doses(add, [...at, 'add'], log.cup) });
    }
    if (pour !== undefined) {
      const over = take({ kind: 'pour', ml: pour });
      if (over && this.sound) {
        const path = [...at, 'pour'];
        const written = asWritten(this.spec.recipe, path, { amount: pour, unit: 'ml' });
        this.fault('recipe/over-poured', path, overPoured(written, over.leftMl, log.pouredMl));
      }
    }
    if (seen) this.see(seen, take);
    if (heat !== undefined || held !== undefined)
      take({ kind: 'heat', ...defined({ celsius: heat, heldMinutes: held }) });
    if (note !== undefined) take({ kind: 'note', text: note });
  }
}
