/**
 * What can be wrong with a maker's measurements and colours, as a value: they are not the programmer's errors, so
 * nothing is thrown.
 */
export type OpticalFaultCode =
  /** The film looks the same over both backings: only K/S can be known from it. */
  | 'opaque'
  /** The film on the white backing is darker than on the black one, or as dark with the backings' order swapped. */
  | 'darker-over-white'
  /** No layer that absorbs and scatters can show this pair of reflectances. */
  | 'unphysical'
  /** A number is not a reflectance, a thickness or a dose. */
  | 'out-of-range';

/** A diagnosed fault: what was found, and what to do about it. */
export interface OpticalFault {
  readonly fault: OpticalFaultCode;
  /** For the maker: what was found and what would mend it. */
  readonly message: string;
  /** nm, where one band is at fault. */
  readonly wavelength?: number;
}

/** Makes a fault value. */
export function opticalFault(fault: OpticalFaultCode, message: string, wavelength?: number): OpticalFault {
  return wavelength === undefined ? { fault, message } : { fault, message, wavelength };
}

/**
 * Tells a fault from a result.
 *
 * @example isOpticalFault({ fault: 'opaque', message: 'no contrast' }) // true
 */
export function isOpticalFault(value: object): value is OpticalFault {
  return 'fault' in value;
}
