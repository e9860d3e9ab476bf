import {
  type Amounts,
  afterStep,
  amountOf,
  type CupState,
  concentrations,
  cupVolume,
  EMPTY_CUP,
  isEmpty,
  isOverPour,
  type LedgerStep,
  naiveSum,
  scaleCup,
  total,
} from '../../cup/ledger.ts';
import type { DiagnosticCode } from '../../diagnostics/catalogue.ts';
import type { FieldPath } from '../../recipe/front-matter.ts';
import type { PlasticAmount } from '../../recipe/plastic-field.ts';
import { gramsOfDose } from '../../units/dose.ts';
import { formatDose } from '../../units/format-quantity.ts';
import type { Quantity, Rate } from '../../units/quantity.ts';
import { UNITS } from '../../units/unit.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { placeOfEnd } from '../read/place-of-end.ts';
import type { Finding, Report } from '../report.ts';
import { asWritten } from './as-written.ts';
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

/** One trial of a cup as the ledger sees it. */
export interface FilledRound {
  /** Index of its first step in the log. */
  readonly step: number;
  readonly added: { material: string; dose: string; grams: number }[];
  plasticAddedMl: number;
  /** The log says that nothing went in: `add: {}`. */
  nothingAdded?: true;
  pouredMl: number;
  heatedTo?: number;
  reheated: boolean;
  note?: string;
  seen?: NonNullable<NonNullable<CupSpec['fields']['log']>[number]['seen']>;
  /** Before the pour. */
  before: CupState;
  after: CupState;
}

/** A cup with its ledger kept. */
export interface FilledCup {
  readonly spec: CupSpec;
  /** Cup that is left; of an empty one, the last that was not. */
  readonly state: CupState;
  /** Before the first round. */
  readonly start: CupState;
  /** Grams of each material per millilitre of plastic. */
  readonly contents: Amounts;
  /** Plastic that the recipe starts with, ml: what a cup derived from this one starts with, if it does not say. */
  readonly plasticMl: number;
  /** The cup whose file states that amount, where this one's does not. */
  readonly startOf?: { readonly recipe: string; readonly cup: string };
  readonly written: readonly { readonly material: string; readonly dose: string }[];
  readonly rounds: readonly FilledRound[];
  /** Only with a log: as if nothing had been poured. */
  readonly naive?: Amounts;
  readonly leftMl?: number;
}

/** Keeps the ledger of one cup. Faults go to the report; undefined where the cup could not be filled. */
export function fillCup(
  spec: CupSpec,
  parent: FilledCup | undefined,
  shelf: CupShelf,
  report: Report,
): FilledCup | undefined {
  const filling = new Filling(spec, shelf, report);
  const { fields, path } = spec;
  if (fields.log && fields.add && !spec.from) {
    filling.fault('recipe/add-and-log', [...path, 'log'], ADD_AND_LOG, 'key');
  }
  filling.start(parent);
  filling.change(parent);
  const written = filling.add(fields.add ?? {}, [...path, 'add']).map(({ material, dose }) => ({ material, dose }));
  const start = filling.state;
  const rounds = filling.log();
  if (!filling.sound) return undefined;
  const state = isEmpty(filling.state)
    ? (rounds.findLast((round) => !isEmpty(round.before))?.before ?? start)
    : filling.state;
  return {
    spec,
    state,
    start,
    contents: concentrations(state),
    plasticMl: filling.plasticMl,
    ...defined({ startOf: filling.startOf }),
    written,
    rounds,
    ...(fields.log
      ? {
          naive: concentrations(naiveSum(start, filling.steps)),
          leftMl: cupVolume(filling.state, filling.volumePerGram),
        }
      : {}),
  };
}

/** Whether another look at a cup begins here: a pour for one, or a view that was seen before. */
function looksAgain(before: FilledRound['seen'], steps: Log): boolean {
  const [step] = steps;
  if (before === undefined || step === undefined) return false;
  const { seen = {} } = step;
  const sees = ('over-white' in seen && 'over-white' in before) || ('over-black' in seen && 'over-black' in before);
  const next = steps.find((each) => each.seen ?? each.add ?? each.plastic);
  return sees || (step.pour !== undefined && next?.seen !== undefined && next.add === undefined);
}

type Log = NonNullable<CupSpec['fields']['log']>;

/** A cup while it is being filled. */
class Filling {
  state: CupState = EMPTY_CUP;
  plasticMl = 0;
  startOf: FilledCup['startOf'];
  sound = true;
  /** Steps of the log, for the sum of the notes. */
  readonly steps: LedgerStep[] = [];
  readonly volumePerGram = (material: string): number => 1 / required(this.shelf.materials, material).density;
  private readonly spec: CupSpec;
  private readonly shelf: CupShelf;
  private readonly report: Report;

  constructor(spec: CupSpec, shelf: CupShelf, report: Report) {
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
    const materials: Record<string, number> = { ...this.state.materials };
    const drop = (id: string, field: 'set' | 'without', at: FieldPath): void => {
      const part = field === 'set' ? 'key' : 'value';
      if (Object.hasOwn(materials, id)) delete materials[id];
      else if (isNoName(this.shelf, id) ? field === 'without' : this.known(id, at, 'material', part)) {
        this.fault('recipe/not-in-cup', at, notInParent(id, field, this.spec.from!, Object.keys(materials)), part);
      }
    };
    for (const [index, id] of (fields.without ?? []).entries()) drop(id, 'without', [...path, 'without', index]);
    for (const id of Object.keys(fields.set ?? {})) drop(id, 'set', [...path, 'set', id]);
    this.state = { ...this.state, materials };
    this.add(fields.set ?? {}, [...path, 'set']);
  }

  /** Adds doses to the cup. */
  add(doses: Readonly<Record<string, Quantity | Rate>>, path: FieldPath): FilledRound['added'] {
    const added = this.doses(doses, path);
    for (const { material, grams } of added) this.take({ kind: 'add', material, grams });
    return added;
  }

  /** Grams of doses, all counted against the plastic that is in the cup now. */
  private doses(doses: Readonly<Record<string, Quantity | Rate>>, path: FieldPath): FilledRound['added'] {
    const plasticMl = total(this.state.plastics);
    let plasticGrams = 0;
    for (const id in this.state.plastics)
      plasticGrams += this.state.plastics[id]! * required(this.shelf.materials, id).density;
    const added: FilledRound['added'] = [];
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
      added.push({ material: id, dose: formatDose(dose), grams });
    }
    return added;
  }

  private take(step: LedgerStep): boolean {
    const next = afterStep(this.state, step, this.volumePerGram);
    if (isOverPour(next)) return false;
    this.state = next;
    return true;
  }

  /** Takes the steps of the log, and gathers them into rounds: one ends when something is added after a pour or a look, or before another look. */
  log(): FilledRound[] {
    const rounds: FilledRound[] = [];
    const log: Log = this.spec.fields.log ?? [];
    for (const [index, step] of log.entries()) {
      const at = [...this.spec.path, 'log', index];
      const last = rounds.at(-1);
      const starts = step.add !== undefined || step.plastic !== undefined;
      const closed = last !== undefined && (last.pouredMl > 0 || last.seen !== undefined);
      if (last === undefined || (starts && closed) || looksAgain(last.seen, log.slice(index))) {
        rounds.push({
          step: index,
          added: [],
          plasticAddedMl: 0,
          pouredMl: 0,
          reheated: false,
          before: this.state,
          after: this.state,
        });
      }
      this.round(rounds.at(-1)!, step, at);
    }
    return rounds;
  }

  private round(round: FilledRound, step: Log[number], at: FieldPath): void {
    const first = this.steps.length;
    if (step.heat !== undefined) round.heatedTo = Math.max(step.heat, round.heatedTo ?? step.heat);
    if (step.reheat) round.reheated = true;
    const note = [round.note, step.note].filter((text) => text !== undefined).join(' ');
    if (note !== '') round.note = note;
    if (step.plastic) {
      for (const [material, ml] of Object.entries(this.plastics([step.plastic], [...at, 'plastic']))) {
        this.record({ kind: 'plastic', material, ml });
        round.plasticAddedMl += ml;
      }
    }
    if (step.add && isEmpty(this.state) && this.sound) {
      this.fault('recipe/empty-cup', [...at, 'add'], ADDED_TO_NOTHING, 'key');
    }
    if (step.add) {
      const added = this.doses(step.add, [...at, 'add']);
      for (const { material, grams } of added) this.record({ kind: 'add', material, grams });
      round.added.push(...added);
      if (Object.keys(step.add).length === 0) round.nothingAdded = true;
    }
    if (first < this.steps.length || round.pouredMl === 0) round.before = this.state;
    if (step.pour !== undefined) {
      const leftMl = cupVolume(this.state, this.volumePerGram);
      if (this.record({ kind: 'pour', ml: step.pour })) round.pouredMl += step.pour;
      else if (this.sound) {
        const path = [...at, 'pour'];
        const pour = asWritten(this.spec.recipe, path, { amount: step.pour, unit: 'ml' });
        this.fault('recipe/over-poured', path, overPoured(pour, leftMl, this.steps));
      }
    }
    if (step.seen) round.seen = { ...round.seen, ...step.seen };
    round.after = this.state;
  }

  private record(step: LedgerStep): boolean {
    const taken = this.take(step);
    if (taken) this.steps.push(step);
    return taken;
  }
}
