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
} from '../cup/ledger.ts';
import { nearestName } from '../diagnostics/nearest-name.ts';
import type { PlasticAmount } from '../recipe/fields.ts';
import type { FieldPath } from '../recipe/front-matter.ts';
import type { Thing } from '../recipe/read-thing.ts';
import { gramsOfDose } from '../units/dose.ts';
import { formatDecimal, formatDose } from '../units/format-quantity.ts';
import type { Quantity, Rate } from '../units/quantity.ts';
import { UNITS } from '../units/unit.ts';
import type { CupSpec } from './cup-specs.ts';
import type { Finding, Report } from './report.ts';

/** What the ledger needs to know of a material. */
export interface CupMaterial {
  readonly id: string;
  readonly kind: 'colorant' | 'powder' | 'flake' | 'plastic' | 'additive';
  readonly density: number;
  readonly gramsPerMl: number;
  readonly gramsPerDrop?: number;
}

/** The shelf as a cup is filled from it. */
export interface CupShelf {
  readonly materials: ReadonlyMap<string, CupMaterial>;
  /** The plastic meant where none is named. */
  readonly plastic: string | undefined;
  /** Names of files with faults of their own, which are not reported again. */
  isFaulty(id: string): boolean;
}

/** One trial of a cup as the ledger sees it. */
export interface FilledRound {
  /** Index of its first step in the log. */
  readonly step: number;
  readonly added: { material: string; dose: string; grams: number }[];
  plasticAddedMl: number;
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
    filling.fault(
      'recipe/add-and-log',
      [...path, 'log'],
      {
        found: '`add` and `log` in one cup',
        expected: 'one of them',
        why: 'it would not be clear whether the amounts come before the rounds or sum them up',
        fix: 'make `add` the first step of `log`',
      },
      'key',
    );
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

/** Volumes are told rounded down to 0.1 ml, so that a pour of what is told is possible. */
function overPoured(pourMl: number, leftMl: number, before: readonly LedgerStep[]): Finding {
  const down = (ml: number): string => formatDecimal(Math.floor(ml * 10 + 1e-6) / 10, 6);
  const most = Math.floor(leftMl * 10 + 1e-6) / 10;
  const poured = before.reduce((sum, step) => sum + (step.kind === 'pour' ? step.ml : 0), 0);
  return {
    found: `${formatDecimal(pourMl, 6)} ml poured`,
    expected: `at most the ${down(leftMl)} ml that are ${poured > 0 ? 'left ' : ''}in the cup`,
    why:
      poured > 0
        ? `the pours before it have taken ${down(poured)} ml`
        : 'that is the plastic with all that was added to it',
    fix: most > 0 ? `write \`pour: ${down(leftMl)} ml\`, or correct an earlier step` : 'correct an earlier step',
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

const ADDED_TO_NOTHING: Finding = {
  found: '`add` to an empty cup',
  expected: 'plastic in the cup',
  why: 'the pours before it have taken all that was in it, and with it nothing is left to be mixed',
  fix: 'give the step `plastic: … ml`, correct an earlier pour, or begin another recipe',
};

type Log = NonNullable<CupSpec['fields']['log']>;

/** A cup while it is being filled. */
class Filling {
  state: CupState = EMPTY_CUP;
  plasticMl = 0;
  sound = true;
  /** Steps of the log, for the sum of the notes. */
  readonly steps: LedgerStep[] = [];
  readonly volumePerGram = (material: string): number => 1 / this.shelf.materials.get(material)!.density;
  private readonly spec: CupSpec;
  private readonly shelf: CupShelf;
  private readonly report: Report;

  constructor(spec: CupSpec, shelf: CupShelf, report: Report) {
    this.spec = spec;
    this.shelf = shelf;
    this.report = report;
  }

  fault(
    ...[code, path, finding, part]: [
      Parameters<Report['add']>[0],
      FieldPath,
      Parameters<Report['add']>[3],
      ('key' | 'value')?,
    ]
  ): void {
    this.sound = false;
    this.report.add(code, this.spec.recipe as Thing, path, finding, part);
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
      const scaled = scaleCup(parent.state, this.plasticMl / total(parent.state.plastics));
      this.state =
        ml > 0 && Object.keys(plastics)[0] !== undefined && this.namesPlastic() ? { ...scaled, plastics } : scaled;
    } else if (ml > 0) {
      this.plasticMl = ml;
      this.state = { plastics, materials: {} };
    } else if (fields.plastic === undefined) {
      this.fault(
        'recipe/no-plastic',
        path,
        {
          found: `cup \`${this.spec.name}\` without \`plastic\``,
          expected: '`plastic` with a volume and a name, such as `120 ml supple`, or `from` with another cup',
          why: 'an amount of colorant means nothing without the plastic it goes into',
          fix: 'add `plastic: 120 ml …` to the cup',
        },
        'key',
      );
    }
  }

  /** Whether the recipe names its plastic, so that it replaces the parent's rather than only setting the amount. */
  private namesPlastic(): boolean {
    return (this.spec.fields.plastic ?? []).some((amount) => amount.plastic !== undefined);
  }

  private plastics(amounts: readonly PlasticAmount[], path: FieldPath): Amounts {
    const plastics: Record<string, number> = {};
    for (const amount of amounts) {
      const id = amount.plastic ?? this.shelf.plastic;
      if (id === undefined && this.names('plastic').length === 0) {
        // The shelf without plastic is reported once, for the book.
        this.sound = false;
      } else if (id === undefined) {
        this.fault('recipe/unknown-plastic', path, {
          found: 'volume without the name of a plastic',
          expected: 'the name after the volume, such as `120 ml supple`',
          why: 'the shelf has several plastics, and `book.md` names none as the usual one',
          fix: 'write the name, or `plastic: NAME` in book.md',
        });
      } else if (this.known(id, path, 'plastic')) plastics[id] = amountOf(plastics, id) + amount.ml;
    }
    return plastics;
  }

  private names(wanted: 'plastic' | 'material'): readonly string[] {
    return [...this.shelf.materials.values()]
      .filter(({ kind }) => (kind === 'plastic') === (wanted === 'plastic'))
      .map(({ id }) => id);
  }

  private known(id: string, path: FieldPath, wanted: 'plastic' | 'material', part: 'key' | 'value' = 'value'): boolean {
    const material = this.shelf.materials.get(id);
    const isPlastic = material?.kind === 'plastic';
    if (material && isPlastic === (wanted === 'plastic')) return true;
    if (!material && this.shelf.isFaulty(id)) {
      this.sound = false;
      return false;
    }
    const names = this.names(wanted);
    const nearest = nearestName(id, names);
    const help = nearest === undefined ? {} : { fix: `write \`${nearest}\``, nearest };
    if (wanted === 'plastic') {
      this.fault(
        'recipe/unknown-plastic',
        path,
        {
          found: `plastic \`${id}\``,
          expected: `the name of a file in shelf/plastics/${names.length > 0 ? ` (${names.join(', ')})` : ''}`,
          ...(nearest === undefined ? { fix: `create shelf/plastics/${id}.md` } : help),
        },
        part,
      );
    } else if (isPlastic) {
      this.fault(
        'recipe/plastic-as-material',
        path,
        {
          found: `plastic \`${id}\` among the materials`,
          expected: 'a colorant, powder, flake or additive',
          why: 'plastic changes how much is in the cup, not only what is in it',
          fix: `write it as \`plastic: … ${id}\``,
        },
        part,
      );
    } else {
      this.fault(
        'recipe/unknown-material',
        path,
        {
          found: `material \`${id}\``,
          expected: 'the name of a file in shelf/',
          why: 'what a material does to the colour is in its file',
          ...(nearest === undefined ? { fix: `create it: shelf/…/${id}.md` } : help),
        },
        part,
      );
    }
    return false;
  }

  /** Leaves out, and replaces, what a derived cup has otherwise than its parent. */
  change(parent: FilledCup | undefined): void {
    const { fields, path } = this.spec;
    if (!parent) {
      for (const name of ['set', 'without'] as const) {
        if (fields[name] !== undefined && !this.spec.from) {
          this.fault(
            'recipe/not-in-cup',
            [...path, name],
            {
              found: `\`${name}\` in a cup that comes from no other`,
              expected: name === 'set' ? '`add`' : 'no such field',
              why: 'there is nothing to change',
            },
            'key',
          );
        }
      }
      return;
    }
    const materials: Record<string, number> = { ...this.state.materials };
    const drop = (id: string, at: FieldPath, part: 'key' | 'value'): void => {
      if (Object.hasOwn(materials, id)) delete materials[id];
      else if (this.known(id, at, 'material', part)) {
        const nearest = nearestName(id, Object.keys(materials));
        this.fault(
          'recipe/not-in-cup',
          at,
          {
            found: `material \`${id}\``,
            expected: `one that is in ${this.spec.from!.recipe}/${this.spec.from!.cup}: ${Object.keys(materials).join(', ')}`,
            ...(part === 'key'
              ? { fix: 'write it under `add`' }
              : nearest === undefined
                ? {}
                : { fix: `write \`${nearest}\``, nearest }),
          },
          part,
        );
      }
    };
    for (const [index, id] of (fields.without ?? []).entries()) drop(id, [...path, 'without', index], 'value');
    for (const id of Object.keys(fields.set ?? {})) drop(id, [...path, 'set', id], 'key');
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
      plasticGrams += this.state.plastics[id]! * this.shelf.materials.get(id)!.density;
    const added: FilledRound['added'] = [];
    for (const [id, dose] of Object.entries(doses)) {
      if (!this.known(id, [...path, id], 'material', 'key')) continue;
      const material = this.shelf.materials.get(id)!;
      const { unit } = 'per' in dose ? dose.quantity : dose;
      if (UNITS[unit].dimension === 'drop' && material.gramsPerDrop === undefined) {
        this.fault('recipe/wrong-measure', [...path, id], {
          found: `\`${formatDose(dose)}\` of ${material.kind} \`${id}\``,
          expected: 'spoons or a mass, such as `1/8 tsp` or `0.3 g`',
          why: `a ${material.kind} has no drops`,
        });
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
    }
    if (first < this.steps.length || round.pouredMl === 0) round.before = this.state;
    if (step.pour !== undefined) {
      const leftMl = cupVolume(this.state, this.volumePerGram);
      if (this.record({ kind: 'pour', ml: step.pour })) round.pouredMl += step.pour;
      else if (this.sound) {
        this.fault('recipe/over-poured', [...at, 'pour'], overPoured(step.pour, leftMl, this.steps));
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
