import fc from 'fast-check';
import { expect, test } from 'vitest';
import { photoDoubt } from '../../src/photo/photo-doubt.ts';

const GREY = { L: 50, a: 0, b: 0 };
const SURE = { certified: true, paperKnown: false, fieldRms: 0, tintSpan: 0 };
const seen = (lab = GREY, untoned = lab, curved = lab) => ({ lab, untoned, curved, spread: 0, clipped: 0 });

test('of a mid grey every term is what its formula gives by hand', () => {
  const view = { ...seen(GREY, { L: 40, a: 0, b: 0 }, { L: 60, a: 0, b: 0 }), spread: 0.02, clipped: 0.1 };
  const { bound, terms, largest } = photoDoubt([view], { ...SURE, certified: false, fieldRms: 0.02, tintSpan: 0.11 });
  // At L 50 the weight of lightness is 1, and 1 % of the light is 0.22 in L. From 40 to 60 is 20 in L, with its weight about 50 as well.
  expect(terms.tone).toBeCloseTo(0.35 * 20, 6);
  expect(terms.paper).toBeCloseTo(0.77, 6);
  expect(terms.camera).toBeCloseTo(3, 6);
  expect(terms.field).toBeCloseTo(0.44, 6);
  expect(terms.mixed).toBeCloseTo(0.6, 6);
  expect(terms.own).toBeCloseTo(0.8 / Math.sqrt(30), 6);
  expect(terms.clip).toBeCloseTo(0.3, 6);
  expect(bound).toBeCloseTo(2.1 * Math.sqrt((0.35 * 20) ** 2 + 0.5929 + 9 + 0.1936 + 0.36 + 0.64 / 30 + 0.09), 6);
  expect(largest).toBe('tone');
});

test('a certified card leaves the camera as the largest doubt, a measured paper makes it smaller', () => {
  const unmeasured = photoDoubt([seen()], SURE);
  expect(unmeasured.largest).toBe('camera');
  expect(unmeasured.terms.tone).toBe(0.8);
  expect(photoDoubt([seen()], { ...SURE, paperKnown: true }).bound).toBeLessThan(unmeasured.bound);
});

test('a strong colour is doubted more than a grey of its lightness', () => {
  expect(photoDoubt([seen({ L: 50, a: 60, b: 0 })], SURE).terms.camera).toBeCloseTo(3 + 0.05 * (60 / 3.7), 6);
});

test('a card that was measured never makes a photo more doubtful', () => {
  const bend = fc.double({ min: 0, max: 15, noNaN: true });
  fc.assert(
    fc.property(bend, bend, (darker, lighter) => {
      const view = seen(GREY, { L: 50 - darker, a: 0, b: 0 }, { L: 50 + lighter, a: 0, b: 0 });
      const [known, unknown] = [SURE, { ...SURE, certified: false }].map((card) => photoDoubt([view], card).bound);
      expect(known).toBeLessThanOrEqual(unknown!);
    }),
  );
});

test('nothing that makes a photo worse makes its doubt smaller', () => {
  const part = fc.double({ min: 0, max: 0.3, noNaN: true });
  fc.assert(
    fc.property(part, part, part, part, fc.boolean(), (fieldRms, tintSpan, spread, clipped, certified) => {
      const card = { ...SURE, certified, fieldRms, tintSpan };
      const best = photoDoubt([seen()], { ...SURE, certified });
      const worse = photoDoubt([{ ...seen(), spread, clipped }], card);
      expect(worse.bound).toBeGreaterThanOrEqual(best.bound);
      expect(worse.terms[worse.largest]).toBe(Math.max(...Object.values(worse.terms)));
    }),
  );
});

test('of two halves each term is between theirs, and no half at all is a slip of the program', () => {
  const dark = seen({ L: 10, a: 0, b: 0 });
  const [one, other, both] = [[seen()], [dark], [seen(), dark]].map((views) => photoDoubt(views, SURE).terms.paper);
  expect(both).toBeLessThan(one!);
  expect(both).toBeGreaterThan(other!);
  expect(() => photoDoubt([], SURE)).toThrow(RangeError);
});
