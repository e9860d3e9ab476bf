import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { BURNT_LINE } from '../../src/words/first-aid.ts';
import { filesBelow } from '../folder-tree.ts';
import { allByRole, byRole, documentOf, wordsIn } from '../page-dom.ts';
import { ROOT } from '../run-cupbook.ts';
import { pageOf } from './sample-book.ts';

const care = documentOf(await pageOf('care'));

/** What somebody with a burn, a smoking cup or a cough must read, and must not. Common practice, from memory. */
const FIRST_AID: readonly (readonly [id: string, says: RegExp])[] = [
  ['burn', /cool running water at once, for 20 minutes.*Don’t pull the plastic off.*rings.*clean.*doctor/],
  ['smoke', /Leave it where it is\. Don’t carry it.*Switch the heat off.*microwave door shut.*Everybody out/],
  ['fire', /Never water.*lid.*extinguisher.*never above the heat.*fire service/],
  ['fumes', /fresh air.*medical help.*hours later/],
];

const CAUTIONS: Readonly<Record<string, RegExp>> = {
  sheet: /the supplier is right/,
  people: /Two are.*birds.*pregnant/,
  air: /no gauge.*mist.*plasticiser/,
  respirator: /dust mask stops no fumes.*acid gas.*beard.*backs up/,
  thermometer: /skin on top.*boiling water.*2 °C/,
  microwave: /spits.*tight lid.*can spark/,
  heater: /never over a flame.*carbon monoxide/,
  injector: /Clamp the mold.*never have your face above it/,
  dust: /Wet them.*P2 or N95.*fan off/,
  unknown: /lead/,
  storage: /children.*polystyrene/,
  scrap: /Never burn vinyl.*drain.*no bait in the water/,
  law: /Local fire/,
};

test('the page Care begins with first aid, and of that with burns', () => {
  const headings = allByRole(care.querySelector('main')!, 'heading').map((heading) => wordsIn(heading));
  expect(headings.slice(0, 3)).toEqual(['Care', 'When it goes wrong', 'Burn: hot plastic on skin']);
  for (const [id, says] of FIRST_AID) {
    const part = care.querySelector(`section[aria-labelledby="${id}"]`);
    expect(wordsIn(part!), id).toMatch(says);
  }
});

test('the page Care has every caution at an address of its own', () => {
  for (const [id, says] of Object.entries(CAUTIONS)) expect(wordsIn(care.querySelector(`#${id}`)!), id).toMatch(says);
});

test('the page Care says where it comes from, and what comes before it', () => {
  expect(wordsIn(care)).toMatch(
    /data sheet comes first.*local codes.*a doctor.*common practice.*from memory.*without a source/,
  );
});

test('every page leads to first aid, and twice more where a cup is heated', async () => {
  const match = documentOf(await pageOf('match'));
  for (const { textContent } of [byRole(match, 'complementary', { name: 'Cautions' })])
    expect(textContent).toContain(BURNT_LINE);
  const links = allByRole(match, 'link', { name: 'First aid' }).map((each) => each.getAttribute('href'));
  expect(links).toEqual(['../care/#burn', '../care/#burn', '../care/#burn']);
  const footOnly = allByRole(documentOf(await pageOf('foreword')), 'link', { name: 'First aid' });
  expect(footOnly.map((each) => each.getAttribute('href'))).toEqual(['../care/#burn']);
});

const CARRIED = /[^.:]*(?:smok|brown|spent|hydrogen chloride)[^.]*\b(?:take|carry|bring) (?:it|the cup)\b[^.]*\./gi;

/** Sentences that tell somebody to take a cup away that is too hot. */
function carried(text: string): readonly string[] {
  return (text.match(CARRIED) ?? []).filter((each) => !each.includes('Don’t carry'));
}

test('nobody is told to carry a cup that is too hot', () => {
  expect(carried('If it smokes or turns brown, take it off the heat and leave the room.')).toHaveLength(1);
  const texts = ['src', 'recipes', 'site/manual'].flatMap((folder) =>
    filesBelow(join(ROOT, folder)).map((path) => join(ROOT, folder, path)),
  );
  const read = texts.filter((path) => /\.(?:ts|md)$/.test(path));
  expect(read.length).toBeGreaterThan(300);
  for (const path of read) expect([path, carried(readFileSync(path, 'utf8'))]).toEqual([path, []]);
});
