/** The lights there are, in the order of the columns of `ILLUMINANTS`. */
export const LIGHTS = ['D65', 'D50', 'A', 'F11', 'LED-B1'] as const;

/**
 * A light that a colour can be seen under: daylight of noon (D65) and of the print trade (D50), an incandescent lamp (A), a
 * three-band fluorescent tube (F11), a warm white LED (LED-B1).
 */
export type Light = (typeof LIGHTS)[number];

/** Lights of shops and evenings, beside the daylight of all other colours. */
export const OTHER_LIGHTS: readonly { readonly light: Light; readonly name: string }[] = [
  { light: 'A', name: 'lamp' },
  { light: 'LED-B1', name: 'warm LED' },
  { light: 'F11', name: 'fluorescent tube' },
];
