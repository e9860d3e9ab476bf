import { describe, expect, test } from 'vitest';
import type { DoubtTerm, PhotoWarning, RefusalReason } from '../../src/photo/photo-measured.ts';
import { photoDoubtCure, photoDoubtText } from '../../src/words/photo-doubt.ts';
import { photoFileText } from '../../src/words/photo-file.ts';
import { noFlakeText, photoFlakeText } from '../../src/words/photo-flake.ts';
import { photoHidesText } from '../../src/words/photo-hides.ts';
import { refusalText, refusalWords } from '../../src/words/photo-refusal.ts';
import { photoWarningText } from '../../src/words/photo-warning.ts';
import { projectFile } from '../book/sample.ts';

const REASONS: Readonly<Record<RefusalReason, true>> = {
  'too-few-marks': true,
  'two-kinds': true,
  'not-flat': true,
  'too-bright': true,
  'too-dark': true,
  glare: true,
  'bait-clipped': true,
  'no-bait': true,
  'too-short': true,
};
const WARNINGS: Readonly<Record<PhotoWarning, true>> = {
  'mixed-light': true,
  shadow: true,
  'fine-texture': true,
  'one-half': true,
  'photos-differ': true,
};
const TERMS: Readonly<Record<DoubtTerm, number>> = {
  tone: 3,
  paper: 1,
  camera: 2,
  field: 0,
  mixed: 0,
  own: 0,
  clip: 0,
};

/** Sentences that a maker reads at the bench. */
function expectSentences(text: string): void {
  for (const sentence of text.split(/(?<=[.?]) /)) {
    expect(sentence).toMatch(/^[A-Z].*[.?]$/);
    expect(sentence.split(' ').length).toBeLessThan(32);
  }
}

describe('refusalText(refused)', () => {
  test.each(Object.keys(REASONS) as RefusalReason[])(
    'of %s says what is wrong, why it matters, and a cure',
    (reason) => {
      const { what, why, cure } = refusalWords({ kind: 'refused', reason });
      expect(new Set([what, why, cure]).size).toBe(3);
      expectSentences(refusalText({ kind: 'refused', reason }));
    },
  );

  test('counts the marks that were found', () => {
    const said = [0, 1, 2].map((found) => refusalWords({ kind: 'refused', reason: 'too-few-marks', found }).what);
    expect(said).toEqual([
      'There is no measuring card to be seen in the photo.',
      'Only 1 of the card’s 4 corner marks can be read.',
      'Only 2 of the card’s 4 corner marks can be read.',
    ]);
  });
});

test.each(Object.keys(WARNINGS) as PhotoWarning[])('photoWarningText(%s) is a sentence or two', (warning) => {
  expectSentences(photoWarningText(warning));
});

test('the manual has every refusal with its cure, and every warning, in the same words', () => {
  const manual = projectFile('site/manual/photo.md').split('\n');
  const asked = [
    ...(Object.keys(REASONS) as RefusalReason[]).map((reason) => {
      const { what, cure } = refusalWords({ kind: 'refused', reason });
      return `| ${what} | ${cure} |`;
    }),
    ...(Object.keys(WARNINGS) as PhotoWarning[]).map((warning) => `- ${photoWarningText(warning)}`),
  ];
  expect(asked.filter((line) => !manual.includes(line))).toEqual([]);
});

describe('photoDoubtText(doubt, photos)', () => {
  test('has the bound and what most of it is', () => {
    expect(photoDoubtText({ bound: 8.3, largest: 'tone' })).toBe(
      'Nine in ten photos like this are within ΔE 8; most of that is how this phone bends light and dark',
    );
    expect(photoDoubtText({ bound: 2.25, largest: 'own' }, 3)).toBe(
      'Nine in ten results of 3 photos like these are within ΔE 2.3; most of that is the bait, which isn’t the same all over',
    );
  });

  test.each(Object.keys(TERMS) as DoubtTerm[])(
    'names the term %s in its own words, with a cure where there is one',
    (largest) => {
      const doubt = { bound: 6, largest, terms: TERMS };
      const others = (Object.keys(TERMS) as DoubtTerm[]).filter((term) => term !== largest);
      for (const other of others) expect(photoDoubtText(doubt)).not.toBe(photoDoubtText({ ...doubt, largest: other }));
      expectSentences(photoDoubtCure(doubt) ?? 'Nothing.');
    },
  );
});

test('photoHidesText(contrast) is a percentage, never surer than a whole one', () => {
  expect(photoHidesText({ ratio: 0.436, bound: 0.03 })).toBe('hides 44 %, nine in ten within 3 %');
  expect(photoHidesText({ ratio: 0.98, bound: 0.001 })).toBe('hides 98 %, nine in ten within 1 %');
});

describe('photoFlakeText(flake, units)', () => {
  const flake = { sizeMm: 0.912, coverage: 0.061, coverageSd: 0.0088, lab: { L: 60, a: 0, b: 0 }, count: 48 };

  test('has its size in the unit of the book, and how much of the bait it shows on', () => {
    expect(photoFlakeText(flake, { volume: 'ml' })).toBe(
      '0.91 mm across, shows on 6.1 % of the bait (4.7 to 7.5 %; 48 flakes counted)',
    );
    expect(photoFlakeText(flake, { volume: 'fl oz' })).toBe(
      '0.036 in across, shows on 6.1 % of the bait (4.7 to 7.5 %; 48 flakes counted)',
    );
  });

  test('promises no less than nothing where few were counted', () => {
    expect(photoFlakeText({ ...flake, coverage: 0.01, coverageSd: 0.01, count: 1 }, { volume: 'ml' })).toBe(
      '0.91 mm across, shows on 1 % of the bait (0 to 2.6 %; 1 flake counted)',
    );
  });

  test('says why nothing is known of it', () => {
    expect(noFlakeText('none-seen')).toBe('none seen');
    expect(noFlakeText('glare')).toBe(
      'too much shine to tell: turn the card until the bait looks dull, and take it again',
    );
    expect(noFlakeText('too-few-pixels')).toBe(
      'too few pixels for flake: go nearer, or take the photo at the camera’s full size',
    );
  });
});

test('photoFileText(fault) says what a file is, why that won’t do, and what to do', () => {
  const found = 'a HEIC picture';
  expect(
    photoFileText({ found, expected: 'a JPEG picture', why: 'few programs read it', fix: 'save it as JPEG' }),
  ).toBe('This is a HEIC picture; it takes a JPEG picture. Few programs read it. Save it as JPEG.');
  expect(photoFileText({ found })).toBe('This is a HEIC picture.');
});
