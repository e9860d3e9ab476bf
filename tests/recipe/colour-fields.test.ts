import { expect, test } from 'vitest';
import { targetOverBlack, targetOverWhite } from '../../src/recipe/colour-fields.ts';
import type { FieldFault } from '../../src/recipe/field-fault.ts';

const BANDS = Array.from({ length: 31 }, (_, band) => 10 + band);

function faultOf(input: unknown): FieldFault {
  const issue = targetOverWhite.safeParse(input).error!.issues[0] as unknown as { readonly params: FieldFault };
  return issue.params;
}

test('targetOverWhite takes what seenColour takes', () => {
  expect(targetOverWhite.parse('#D9C48F')).toBe('#d9c48f');
  const lab = { lab: [80, 1, 29], light: 'D50' };
  expect(targetOverWhite.parse(lab)).toEqual(lab);
  expect(faultOf('d9c48f').fix).toBe('write `"#d9c48f"`');
});

test('targetOverWhite takes a reflectance in percent, by default 400 nm onwards by 10, beside the gloss', () => {
  expect(targetOverWhite.parse({ reflectance: BANDS })).toEqual({
    reflectance: BANDS,
    from: 400,
    step: 10,
    gloss: 'excluded',
  });
  const fine = { reflectance: [...BANDS, ...BANDS, ...BANDS], from: 360, step: 5, gloss: 'included' };
  expect(targetOverWhite.parse(fine)).toEqual(fine);
});

test('targetOverWhite says what is wrong with a reflectance', () => {
  expect(faultOf({ reflectance: BANDS.slice(0, 20) })).toMatchObject({
    found: '20 reflectances from 400 to 590 nm',
    why: 'a colour takes all bands from 400 to 700 nm',
  });
  expect(faultOf({ reflectance: BANDS.map((percent) => percent / 100) })).toMatchObject({
    found: 'a reflectance of 1 % at most',
    fix: 'multiply each by 100',
  });
  expect(faultOf({ reflectance: '8.1, 8.4' }).found).toBe('a reflectance that is not a list of numbers from 0 to 120');
  expect(faultOf({ reflectance: [...BANDS.slice(1), Number.NaN] }).found).toMatch(/not a list of numbers/);
  expect(faultOf({ reflectance: BANDS, step: 0 }).found).toBe('a reflectance without its wavelengths');
  expect(faultOf({ reflectance: BANDS, gloss: 'some' }).found).toBe('gloss `some`');
  expect(faultOf({ reflectance: BANDS, light: 'A' }).found).toBe('`light` in a reflectance');
});

test('targetOverBlack takes a black that is darker than 1 % beside the gloss, and none with it', () => {
  const black = BANDS.map(() => 0.6);
  expect(targetOverBlack.safeParse({ reflectance: black }).success).toBe(true);
  expect(targetOverBlack.safeParse({ reflectance: black, gloss: 'included' }).success).toBe(false);
  expect(targetOverWhite.safeParse({ reflectance: black }).success).toBe(false);
});
