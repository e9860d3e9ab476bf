import { describe, expect, test } from 'vitest';
import { beliefOf } from '../../src/book/learning/eye-of.ts';
import { beforeAndAfter } from '../../src/book/shelf/before-and-after.ts';
import { DIFFERS } from '../../src/book/shelf/shown-alone.ts';
import { appearance } from '../../src/optics/appearance.ts';
import { cupBody, type OpticalMaterial } from '../../src/optics/cup-body.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { NO_PATH, USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { alongPath } from '../../src/optics/stack.ts';
import { BODY_MM, CHIP_DOUBT } from '../../src/tables/label-doubt.ts';
import { required } from '../../src/values/required.ts';
import { bookWith, file, recipeOf } from './sample.ts';

/** Thicker than any of these needs to hide what is behind it, mm. */
const HIDING_MM = 200;

test.each([
  ['pearl', '#b8862f', '1 %'],
  ['pearl', '#e9dfc6', '1/4 tsp per 120 ml'],
  ['pearl', '#d0a0c0', '0.5 %'],
  ['pigment', '#8c1f1f', '10 drops per 100 ml'],
  ['white', '#e6e4dc', '1/8 tsp per 4 fl oz'],
])(
  'the label of a %s comes back as stated, %s at %s: a recipe with that dose, where it hides what is behind it',
  (kind, colour, dose) => {
    const folder = dose.includes('drops') ? 'colorants' : 'powders';
    const per = /(.+) per (.+)/.exec(dose);
    const book = bookWith({
      [`shelf/${folder}/label.md`]: file(`title: Label\nlook: { kind: ${kind}, colour: "${colour}", dose: ${dose} }`),
      'colours/label-bait.md': file(
        `title: Label bait\nmold: minnow\ncups:\n  body: { plastic: ${per?.[2] ?? '100 ml'}, add: { label: ${per?.[1] ?? dose} } }`,
      ),
    });
    const [cup] = recipeOf(book, 'label-bait').cups;
    const asLabelled = (name: string): OpticalMaterial => {
      const { label } = required(book.materials, name);
      return label ? { constants: label } : {};
    };
    const body = cupBody(cup!, asLabelled, USUAL_OPTICS);
    // Light goes as far as in a body that is looked at, however much of it lies behind.
    const met = alongPath([{ ...body, thickness: BODY_MM }], USUAL_OPTICS.path)[0]!;
    const optics = { ...USUAL_OPTICS, path: NO_PATH };
    const { overWhite, overBlack } = appearance(met, { thickness: HIDING_MM, optics });
    expect(deltaE00(overWhite.lab, labFromHex(colour))).toBeLessThan(0.5);
    expect(deltaE00(overBlack.lab, labFromHex(colour))).toBeLessThan(0.5);
    // What the book believes is as near to it as a label is believed: one standard deviation, root mean square.
    const dosed = { plastics: [['supple', 1]], contents: [['label', cup!.contents[0]!.gramsPerMl]] } as const;
    const believed = beliefOf(book.learned).mean({ layers: [{ ...dosed, thicknessMm: 6 }] });
    expect(deltaE00(believed.overWhite, labFromHex(colour))).toBeLessThan(4);
    expect(required(book.materials, 'label')).toMatchObject({ known: { how: 'estimated' } });
  },
);

describe('a pearl with one hue over white and another over black', () => {
  test.each([
    ['blue', '#d5dbe0', '#3d4b68'],
    ['red', '#dde0da', '#6b4347'],
    ['green', '#e0dadd', '#3f6650'],
    ['gold', '#dadbe0', '#6e613c'],
  ])('is believed as its chip shows it over both, %s', (_, overWhite, overBlack) => {
    const book = bookWith({
      'shelf/powders/hush.md': file(
        `title: Hush\nlook: { kind: pearl, chips: [{ dose: 0.25 %, thickness: 2.5 mm, over-white: "${overWhite}", over-black: "${overBlack}" }] }\ndensity: 3 g/ml`,
      ),
    });
    const { said, learned, deltaE } = beforeAndAfter(required(book.materials, 'hush'), book)!;
    for (const [view, chip] of [
      ['overWhite', overWhite],
      ['overBlack', overBlack],
    ] as const) {
      expect(deltaE00(said[view].lab, labFromHex(chip)), view).toBeLessThan(0.01);
      expect(deltaE00(learned[view].lab, labFromHex(chip)), view).toBeLessThan(CHIP_DOUBT);
    }
    expect(deltaE).toBeLessThan(DIFFERS);
    expect(book.learned.weights.labels.hush![0]).toBeGreaterThan(0.5);
  });
});
