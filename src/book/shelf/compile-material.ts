import type { MaterialKind } from '../../kinds/kinds.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import type { ConstantsDoubt } from '../../tables/constants-doubt.ts';
import { gramsOfDose } from '../../units/dose.ts';
import { formatDecimal, formatQuantity, type TemperatureUnit } from '../../units/format-quantity.ts';
import type { Quantity } from '../../units/quantity.ts';
import { UNITS } from '../../units/unit.ts';
import { defined } from '../../values/defined.ts';
import type { Material } from '../model/shelf.ts';
import { photoOf } from '../photo-of.ts';
import type { Report } from '../report.ts';
import { materialHeat } from './material-heat.ts';
import { type LookContext, relativeDose } from './material-look.ts';
import { handlingOf, heatsBorne, lookOf, type MaterialHandling, usualPowder } from './material-of-kind.ts';

/** A material before it is known where it is used and what it looks like in steps. */
export interface MaterialCore extends Omit<Material, 'ladder' | 'usedIn' | 'hex' | 'known' | 'sure' | 'learnedHex'> {
  /** How surely films tell its K and S. */
  readonly doubt?: ConstantsDoubt;
}

/** What a material's file says of it, but for what it looks like. */
export interface MaterialAmounts extends Pick<Material, 'highest' | 'working' | 'bears'> {
  readonly handling: MaterialHandling;
  /** Most of it in a cup, g per ml of plastic; `wrong` where what is stated cannot be. */
  readonly most: number | 'wrong' | undefined;
}

/** Reads what films tell nothing of; faults are reported. */
export function materialAmounts(thing: Thing<MaterialKind>, unit: TemperatureUnit, report: Report): MaterialAmounts {
  const handling = handlingOf(thing);
  const { fields } = thing;
  const most =
    fields.most === undefined ? undefined : (relativeDose(thing, fields.most, ['most'], handling, report) ?? 'wrong');
  if (fields.price !== undefined && fields.pack === undefined) {
    report.add('material/pack', thing, ['price'], {
      found: '`price` without `pack`',
      expected: 'the size of the pack beside it, such as `pack: 30 ml`',
      why: 'the cost of a bait comes from the price of a gram',
      fix: 'add a line `pack: …`',
    });
  }
  return { handling, most, ...materialHeat(thing, unit, report), ...defined({ bears: heatsBorne(thing, handling) }) };
}

/**
 * A material from its file; undefined, and reported, where it cannot be.
 */
export function compileMaterial(
  thing: Thing<MaterialKind>,
  { handling, most, ...heat }: MaterialAmounts,
  known: LookContext,
  report: Report,
): MaterialCore | undefined {
  const { fields } = thing;
  const look = lookOf(thing, handling, known, report);
  if (look === undefined || most === 'wrong') return undefined;
  const packGrams = boughtGrams(fields.pack, handling);
  const counted = fields.stock === 'none' ? undefined : fields.stock;
  const stockGrams = fields.stock === 'none' ? 0 : boughtGrams(fields.stock, handling);
  const assumptions = [...handling.assumptions, ...look.assumptions];
  const plastic = thing.kind === 'plastic' ? thing.fields : undefined;
  const coloured = thing.kind === 'colorant' || thing.kind === 'powder' ? thing.fields : undefined;
  const additive = thing.kind === 'additive' ? thing.fields : undefined;
  return {
    id: thing.id,
    kind: thing.kind,
    title: fields.title,
    notes: thing.notes,
    photos: (fields.photos ?? []).map(photoOf),
    ...defined({ constants: look.constants }),
    tier: look.tier,
    expectedDeltaE: look.expectedDeltaE,
    ...defined({
      doubt: look.doubt,
      fit: look.fit,
      flake: look.flake,
      hardness: plastic?.hardness,
      use: additive?.use,
      effect: coloured?.effect,
    }),
    ...(plastic?.look.kind === 'milky' ? { milky: true } : {}),
    ...(thing.kind === 'powder' && usualPowder(thing.fields.look.kind) === 'pearl' ? { pearl: true } : {}),
    density: handling.density,
    gramsPerMl: handling.gramsPerMl,
    ...defined({ gramsPerDrop: handling.gramsPerDrop, price: fields.price }),
    ...(fields.pack === undefined ? {} : { pack: formatQuantity(fields.pack) }),
    byVolume: isByVolume(fields.pack ?? counted, thing.kind),
    byOunce: isByOunce(fields.pack ?? counted),
    ...defined({ packGrams, stockGrams }),
    ...heat,
    ...defined({ most, typical: look.typical }),
    assumptions,
    source: thing.source,
  };
}

/** Grams of a pack or a stock, by the density with which the material is measured out. */
function boughtGrams(quantity: Quantity | undefined, { gramsPerMl }: MaterialHandling): number | undefined {
  return quantity === undefined
    ? undefined
    : gramsOfDose(quantity, { gramsPerMl, gramsPerDrop: 0 }, { ml: 0, grams: 0 });
}

function isByVolume(counted: Quantity | undefined, kind: MaterialKind): boolean {
  return counted === undefined ? kind === 'plastic' : UNITS[counted.unit].dimension === 'volume';
}

function isByOunce(counted: Quantity | undefined): boolean {
  return counted?.unit === 'oz' || counted?.unit === 'lb';
}

/** A dose in words that fit the material: drops of a liquid, grams of anything else, per 100 ml of plastic. */
export function doseLabel(material: Pick<MaterialCore, 'gramsPerDrop'>, gramsPerMl: number): string {
  const grams = gramsPerMl * 100;
  return material.gramsPerDrop === undefined
    ? `${formatDecimal(grams, 2)} g`
    : formatQuantity({ amount: Number(formatDecimal(grams / material.gramsPerDrop, 2)), unit: 'drop' });
}
