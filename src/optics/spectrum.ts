/**
 * Spectra on the one grid of this book: 36 bands, 380 to 730 nm in steps of 10 nm.
 *
 * A spectrum that comes in may be any `ArrayLike<number>` of 36 numbers (in the book's JSON it is a plain array); a
 * spectrum that goes out is a `Float64Array`.
 */

/** 36 numbers, one a band. */
export type Spectrum = Float64Array;

/** Bands of a spectrum. */
export const BAND_COUNT = 36;

/** Centre of the first band, nm. */
const FIRST_WAVELENGTH = 380;

/** Distance from band to band, nm. */
const BAND_STEP = 10;

/** Centres of the bands, nm. */
export const WAVELENGTHS: readonly number[] = Array.from(
  { length: BAND_COUNT },
  (_, band) => FIRST_WAVELENGTH + BAND_STEP * band,
);

/**
 * A spectrum that is the same in every band.
 *
 * @example constantSpectrum(0.9)[35] // 0.9
 */
export function constantSpectrum(value: number): Spectrum {
  return new Float64Array(BAND_COUNT).fill(value);
}

/**
 * A copy of 36 numbers, checked.
 *
 * Throws: RangeError if there are not 36 numbers, or one of them is not finite.
 */
export function spectrumFrom(values: ArrayLike<number>): Spectrum {
  requireBands(values, 'spectrum');
  const spectrum = Float64Array.from(values);
  for (let band = 0; band < BAND_COUNT; band++) {
    if (!Number.isFinite(spectrum[band])) {
      throw new RangeError(
        `Spectrum is ${spectrum[band]} at ${WAVELENGTHS[band]} nm; give a finite number for every band`,
      );
    }
  }
  return spectrum;
}

/**
 * Applies a function to every band.
 *
 * @example mapSpectrum(constantSpectrum(0.5), (R) => 1 - R)[0] // 0.5
 */
export function mapSpectrum(spectrum: ArrayLike<number>, change: (value: number, band: number) => number): Spectrum {
  requireBands(spectrum, 'spectrum');
  const result = new Float64Array(BAND_COUNT);
  for (let band = 0; band < BAND_COUNT; band++) result[band] = change(spectrum[band]!, band);
  return result;
}

/**
 * Brings a measured spectrum to the grid of this book: straight lines between the measured points, the first and the
 * last value held beyond them.
 *
 * Instruments that start at 400 nm and end at 700 nm lose little by that: the observer's weights beyond are below 0.1 %
 * of the whole (ASTM E308 holds the end values in the same way; from memory).
 * Shape: `wavelengths` in nm, rising, as many as `values`.
 * Throws: RangeError if the two differ in length, are empty, don't rise, or hold a number that is not finite.
 *
 * @example resampleSpectrum([400, 700], [0.2, 0.8])[17] // 0.5: at 550 nm
 */
export function resampleSpectrum(wavelengths: ArrayLike<number>, values: ArrayLike<number>): Spectrum {
  if (wavelengths.length === 0 || wavelengths.length !== values.length) {
    throw new RangeError(
      `${wavelengths.length} wavelengths for ${values.length} values; give one wavelength a value, and at least one`,
    );
  }
  for (let i = 0; i < wavelengths.length; i++) {
    const rises = i === 0 || wavelengths[i]! > wavelengths[i - 1]!;
    if (!(rises && Number.isFinite(wavelengths[i]) && Number.isFinite(values[i]))) {
      throw new RangeError(`Point ${i + 1} is ${values[i]} at ${wavelengths[i]} nm; give finite numbers, rising in nm`);
    }
  }
  const result = new Float64Array(BAND_COUNT);
  const last = wavelengths.length - 1;
  let right = 0;
  for (let band = 0; band < BAND_COUNT; band++) {
    const wavelength = FIRST_WAVELENGTH + BAND_STEP * band;
    while (right <= last && wavelengths[right]! < wavelength) right++;
    if (right === 0) result[band] = values[0]!;
    else if (right > last) result[band] = values[last]!;
    else {
      const from = wavelengths[right - 1]!;
      const share = (wavelength - from) / (wavelengths[right]! - from);
      result[band] = values[right - 1]! * (1 - share) + values[right]! * share;
    }
  }
  return result;
}

/**
 * Throws: RangeError, naming the quantity, unless there are 36 bands.
 */
export function requireBands(values: ArrayLike<number>, name: string): void {
  if (values.length !== BAND_COUNT) {
    throw new RangeError(
      `${name} has ${values.length} bands; give ${BAND_COUNT}, from 380 to 730 nm (see resampleSpectrum)`,
    );
  }
}
