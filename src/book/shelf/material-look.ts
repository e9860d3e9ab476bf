import type { MaterialKind } from '../../kinds/kinds.ts';
import { isOpticalFault } from '../../optics/fault.ts';
import { fromChips } from '../../optics/from-chips.ts';
import { fromColourAndKind } from '../../optics/from-colour-and-kind.ts';
import type { MaterialConstants, MaterialResult } from '../../optics/material-constants.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { plasticConstants } from '../../optics/plastic.ts';
import type { FieldPath } from '../../recipe/field-path.ts';
import { DOSE_IN_PLASTIC } from '../../recipe/fields.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import type { FieldsOf } from '../../recipe/schema.ts';
import { MEASUREMENTS_FILE } from '../../recipe/source.ts';
import type { ConstantsDoubt } from '../../tables/constants-doubt.ts';
import { PLASTIC_DENSITY } from '../../tables/material-defaults.ts';
import { gramsOfDose, type Handling } from '../../units/dose.ts';
import { formatDose } from '../../units/format-quantity.ts';
import { isRate, type Quantity, type Rate } from '../../units/quantity.ts';
import { UNITS } from '../../units/unit.ts';
import { defined } from '../../values/defined.ts';
import { statedColour } from '../cups/seen-colour.ts';
import { median } from '../median.ts';
import type { Constants, Material } from '../model/shelf.ts';
import type { Report } from '../report.ts';

type LookFields = NonNullable<FieldsOf<'colorant'>['look']>;

/** K and S of a material and the dose that its look states, g per ml of plastic. */
export interface MaterialLook extends Pick<MaterialConstants, 'tier' | 'expectedDeltaE'> {
  readonly constants: Constants;
  readonly typical?: number;
  /** Of what films tell. */
  readonly doubt?: ConstantsDoubt;
  readonly fit?: NonNullable<Material['fit']>;
}

// Kept in the book, and so on its pages, with six digits: far finer than any of them is known, and less than half the size of the JSON.
const rounded = (values: ArrayLike<number>): readonly number[] =>
  Array.from(values, (value) => Number(value.toPrecision(6)));

/** K and S with as many digits as the book keeps. */
export function keptConstants(constants: { absorption: ArrayLike<number>; scattering: ArrayLike<number> }): Constants {
  return { absorption: rounded(constants.absorption), scattering: rounded(constants.scattering) };
}

/**
 * Grams per millilitre of a dose that must not depend on the size of a cup; undefined, and reported, where it does.
 */
export function relativeDose(
  thing: Thing<MaterialKind>,
  dose: Quantity | Rate,
  path: FieldPath,
  handling: Partial<Handling> & { gramsPerMl: number },
  report: Report,
): number | undefined {
  const unit = isRate(dose) ? dose.quantity.unit : dose.unit;
  if (!isRate(dose) && UNITS[unit].dimension !== 'part') {
    report.add('field/quantity', thing, path, {
      found: `\`${formatDose(dose)}\``,
      expected: DOSE_IN_PLASTIC,
      why: 'there is no cup here that it could be for',
      fix: `write \`${formatDose(dose)} per 100 ml\``,
    });
    return undefined;
  }
  if (UNITS[unit].dimension === 'drop' && handling.gramsPerDrop === undefined) {
    report.add('recipe/wrong-measure', thing, path, {
      found: `\`${formatDose(dose)}\` of a ${thing.kind}`,
      expected: 'spoons or a mass, such as `1/8 tsp per cup` or `1 %`',
      why: `a ${thing.kind} has no drops`,
    });
    return undefined;
  }
  return gramsOfDose(dose, { gramsPerDrop: 0, ...handling }, { ml: 100, grams: 100 * PLASTIC_DENSITY }) / 100;
}

/** What is known of a look besides its file. */
export interface LookContext {
  /** What films tell of it. */
  readonly measured: MaterialLook | 'unreadable' | undefined;
  readonly optics: OpticalModel;
}

/** K and S from what a file says of a look; undefined, and reported, where it cannot be. */
export function materialLook(
  thing: Thing<MaterialKind>,
  look: LookFields,
  handling: Partial<Handling> & { gramsPerMl: number },
  { measured, optics }: LookContext,
  report: Report,
): MaterialLook | undefined {
  const path = ['look'];
  if (look.kind === 'measured') {
    if (measured === 'unreadable') return undefined;
    if (measured) return measured;
    report.add('material/not-measured', thing, [...path, 'kind'], {
      found: '`measured` without a film',
      expected: `at least one film of it in ${MEASUREMENTS_FILE}`,
      why: 'what it absorbs and scatters is found from its films',
      fix: 'add its films there, or describe it by `chips`, or by a colour and another kind',
    });
    return undefined;
  }
  if (look.chips) {
    const doses = look.chips.map((chip, index) =>
      relativeDose(thing, chip.dose, [...path, 'chips', index, 'dose'], handling, report),
    );
    if (doses.some((dose) => dose === undefined)) return undefined;
    const result = fromChips({
      plastic: plasticConstants('clear'),
      chips: look.chips.map((chip, index) => ({
        concentration: doses[index]!,
        thickness: chip.thickness,
        overWhite: statedColour(chip['over-white']),
        overBlack: statedColour(chip['over-black']),
      })),
      optics,
    });
    return settle(result, 'photographed', median(doses as number[]), thing, [...path, 'chips'], report);
  }
  const { colour, dose, thickness } = look;
  const kind = look.kind;
  if (kind === undefined || colour === undefined || dose === undefined) {
    const missing = Object.entries({ kind, colour, dose }).flatMap(([name, value]) =>
      value === undefined ? [`\`${name}\``] : [],
    );
    report.add(
      'material/look-incomplete',
      thing,
      path,
      {
        found: `look without ${missing.join(' and ')}`,
        expected: '`kind`, `colour` and `dose` together, or `chips`',
        why: 'a colour says how much of a material it takes only with its dose and the way the material acts on light',
        fix: `add ${missing.join(' and ')} under \`look\``,
      },
      'key',
    );
    return undefined;
  }
  const typical = relativeDose(thing, dose, [...path, 'dose'], handling, report);
  if (typical === undefined) return undefined;
  const result = fromColourAndKind({ colour, kind, dose: typical, ...defined({ thickness }), optics });
  return settle(result, 'estimated', typical, thing, [...path, 'colour'], report);
}

function settle(
  result: MaterialResult,
  tier: 'photographed' | 'estimated',
  typical: number,
  thing: Thing,
  path: FieldPath,
  report: Report,
): MaterialLook | undefined {
  if (isOpticalFault(result)) {
    report.add(
      'material/chip',
      thing,
      path,
      {
        found: lowerFirst(result.message),
        expected: 'a chip that is lighter over white than over black, as every translucent thing is',
        why: 'what a material absorbs and scatters is found from the difference between the two',
        fix: 'exchange `over-white` and `over-black` if they were mixed up; otherwise take both photos again under the same light, of a thinner chip if it hides its backing',
      },
      'key',
    );
    return undefined;
  }
  return {
    constants: keptConstants(result.constants),
    tier,
    expectedDeltaE: result.expectedDeltaE,
    typical,
  };
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
