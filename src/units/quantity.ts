import type { Edit } from './edit.ts';
import type { Unit } from './unit.ts';

/** An amount of something: 22 drops, 1/8 tsp, 171 °C. */
export interface Quantity {
  readonly amount: number;
  readonly unit: Unit;
}

/** A dose by volume of plastic: 10 drops per 4 fl oz. */
export interface Rate {
  readonly quantity: Quantity;
  /** A volume of plastic. */
  readonly per: Quantity;
}

/** Why a text is not a quantity, in the words of a diagnostic. */
export interface QuantityFault {
  readonly found: string;
  readonly expected: string;
  readonly why?: string;
  /** What may be written in its place. It may have another fault, with edits of its own. */
  readonly edits?: readonly Edit[];
  /** What else may be written, in words. */
  readonly otherwise?: string;
  /** The number and what stands where its unit should, if that is no unit. */
  readonly unknownUnit?: {
    readonly number: string;
    readonly spelling: string;
    readonly allowed: readonly string[];
    /** What stands after the unit. */
    readonly after?: string;
  };
  /** What the amount would have to lie in, if it is one that no bench has: "from 0.1 mg to 1000 kg". */
  readonly bounds?: string;
}

/** Whether a parsed text is a fault; of the optics' figures it is `isOpticalFault`. */
export function isFault<T extends object>(parsed: T | QuantityFault): parsed is QuantityFault {
  return 'expected' in parsed;
}

/** Whether a dose is given per volume of plastic. */
export function isRate(dose: Quantity | Rate): dose is Rate {
  return 'per' in dose;
}
