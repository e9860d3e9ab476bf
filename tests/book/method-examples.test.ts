import { expect, test } from 'vitest';
import { methodExamples } from '../../src/book/method/method-examples.ts';
import type { Appearance } from '../../src/book/model/colours.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { bookWith, file } from './sample.ts';

const book = bookWith({
  'shelf/flakes/dust-008.md': file('title: Dust\nsize: 0.008 in\nlook: { colour: "#c0c0c8" }'),
  'shelf/colorants/blue.md': file('title: Blue\nlook: { kind: dye, colour: "#2f5fb3", dose: 10 drops per 100 ml }'),
  'shelf/colorants/yellow.md': file('title: Yellow\nlook: { kind: dye, colour: "#e2c21f", dose: 10 drops per 100 ml }'),
  'shelf/colorants/chalk.md': file('title: Chalk\nlook: { kind: white, colour: "#f0f0ee", dose: 10 drops per 100 ml }'),
});
const examples = methodExamples(book);
const ids = (materials: readonly { readonly id: string }[]): readonly string[] => materials.map(({ id }) => id);

test('methodExamples(book) finds what swallows and what scatters', () => {
  expect(['blue', 'yellow']).toContain(examples.absorber!.material.id);
  expect(examples.scatterer!.material.id).toBe('chalk');
  const { absorption, scattering } = examples.scatterer!;
  expect(scattering[17]!).toBeGreaterThan(absorption[17]!);
});

test('methodExamples(book) gets darker with thickness over white, and lighter over black where the plastic scatters', () => {
  const L = (view: (look: Appearance) => number): readonly number[] =>
    examples.thickness!.steps.map(({ look }) => view(look));
  const white = L(({ overWhite }) => overWhite.lab.L);
  expect(white).toEqual([...white].sort((one, other) => other - one));
});

test('methodExamples(book) shows the pair whose mix is furthest from the mean of the screen colours', () => {
  const { mixing } = examples;
  expect(mixing!.pairs).toBeGreaterThanOrEqual(3);
  expect(mixing!.deltaE).toBeGreaterThan(5);
  expect(mixing!.deltaE).toBeGreaterThanOrEqual(mixing!.medianDeltaE);
  expect(mixing!.averaged.overWhite).toMatch(/^#[0-9a-f]{6}$/);
});

test('methodExamples(book) leaves greys out of the layers', () => {
  expect(ids(examples.layers!.materials)).not.toContain('chalk');
});

test('methodExamples(book) has light between none and all, less of it in dirtier water', () => {
  const [clear, green, turbid] = examples.water.map(({ light }) => light[18]!);
  expect(clear! < 1 && clear! > green! && green! > turbid! && turbid! > 0).toBe(true);
});

test('methodExamples(book) meets ever more flake with depth', () => {
  const met = examples.flake!.steps.map((step) => step.met);
  expect(met[0]).toBe(0);
  expect(met).toEqual([...met].sort((one, other) => one - other));
  expect(met.at(-1)!).toBeLessThan(1);
});

test('methodExamples(…) of an empty shelf has only the water', () => {
  const empty = methodExamples({ optics: USUAL_OPTICS, materials: [] });
  expect(Object.keys(empty).sort()).toEqual(['water', 'waterDepthM']);
});
