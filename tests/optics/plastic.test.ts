import { expect, test } from 'vitest';
import { appearance } from '../../src/optics/appearance.ts';
import { chroma } from '../../src/optics/cielab.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { type PlasticLook, plasticConstants } from '../../src/optics/plastic.ts';

const LOOKS: readonly PlasticLook[] = ['clear', 'milky'];

test.each(LOOKS)('plasticConstants(%s) are above 0, and absorb more toward the blue', (look) => {
  const { absorption, scattering } = plasticConstants(look);
  for (let band = 1; band < 36; band++) {
    expect(absorption[band]!).toBeGreaterThan(0);
    expect(absorption[band]!).toBeLessThanOrEqual(absorption[band - 1]!);
    expect(scattering[band]!).toBeGreaterThan(0);
  }
});

test('plasticConstants: 10 mm of clear plastic over white are a faint yellow, over black nearly black', () => {
  const { overWhite, overBlack, contrastRatio } = appearance(plasticConstants(), {
    thickness: 10,
    optics: USUAL_OPTICS,
  });
  expect(chroma(overWhite.lab)).toBeLessThan(6);
  const hue = (Math.atan2(overWhite.lab.b, overWhite.lab.a) * 180) / Math.PI;
  expect(hue).toBeGreaterThan(80);
  expect(hue).toBeLessThan(125);
  expect(overBlack.lab.L).toBeLessThan(20);
  expect(contrastRatio).toBeLessThan(0.05);
});

test('plasticConstants hide more from clear to milky', () => {
  const ratios = LOOKS.map(
    (look) => appearance(plasticConstants(look), { thickness: 10, optics: USUAL_OPTICS }).contrastRatio,
  );
  expect(ratios[0]!).toBeLessThan(ratios[1]! / 2);
});
