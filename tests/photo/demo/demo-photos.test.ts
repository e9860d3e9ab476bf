import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import matter from 'gray-matter';
import { expect, test } from 'vitest';
import { cardOfBook } from '../../../src/book/card-of-book.ts';
import { firstRecipeFor } from '../../../src/book/match/ask-matching.ts';
import { bodyViews, viewsDifference } from '../../../src/optics/cup-body.ts';
import { averagePhotos } from '../../../src/photo/average-photos.ts';
import { measurePhoto } from '../../../src/photo/measure-photo.ts';
import { photoFields } from '../../../src/photo/photo-fields.ts';
import { readPixels } from '../../../src/shell/read-pixels.ts';
import { projectFile } from '../../book/sample.ts';
import { WHOLE_DEMO_BOOK } from '../../render/demo-book.ts';
import { ROOT } from '../../run-cupbook.ts';
import { DEMO_BAITS, demoBody } from './demo-photos.ts';

const CAMERA = 'Jonna’s phone';
const CARD = cardOfBook([{ path: 'book.md', text: projectFile('recipes/book.md') }]).print!;

/** What photos tell, as a file has it: those that the demo book shows lie in it, the others here. */
async function told(names: readonly string[]) {
  const photos = [];
  for (const name of names) {
    const own = join(ROOT, 'recipes/photos', `${name}-rendered.jpg`);
    const path = existsSync(own) ? own : join(ROOT, 'tests/photo/demo', `${name}-rendered.jpg`);
    const bytes = readFileSync(path);
    expect(bytes.length).toBeLessThanOrEqual(60_000);
    const measured = measurePhoto(await readPixels(bytes), CARD);
    if (measured.kind === 'refused') throw new Error(`${name}: ${measured.reason}`);
    photos.push(measured);
  }
  return photoFields(averagePhotos(photos), CAMERA);
}

const fieldsOf = (file: string) => matter(projectFile(`recipes/${file}`)).data;

test.each(['back', 'belly'])('the %s of the two-tone elver is what its three photos tell', async (part) => {
  const written = fieldsOf('targets/two-tone-elver.md').parts[part];
  expect(written).toEqual(await told([1, 2, 3].map((shot) => `elver-${part}-${shot}`)));
});

test.each([
  ['leaf-pearl', 'powders'],
  ['violet-hush', 'powders'],
  ['rowan', 'colorants'],
])('the chip of %s is what its photo tells', async (material, folder) => {
  const { dose, thickness, ...written } = fieldsOf(`shelf/${folder}/${material}.md`).look.chips[0];
  expect(thickness).toBe('6 mm');
  expect(dose).toBeDefined();
  expect(written).toEqual(await told([`${material}-chip`]));
  expect(WHOLE_DEMO_BOOK.materials.find(({ id }) => id === material)!.tier).toBe('photographed');
});

test('a match of the laminate by its photos alone is of the colour that was really on the card, within their doubt', () => {
  const target = WHOLE_DEMO_BOOK.targets.find(({ id }) => id === 'two-tone-elver')!;
  const sides = firstRecipeFor(WHOLE_DEMO_BOOK, target, { most: 3, plasticMl: 120 });
  expect(sides.map(({ part }) => part)).toEqual(['back', 'belly']);
  for (const { part, recipe } of sides) {
    expect(recipe.advice.kind, part).toBe('make');
    const cup = recipe.proposals[0]!.cups[0]!;
    const proposed = {
      plasticMl: cup.plasticMl,
      grams: Object.fromEntries(cup.amounts.map(({ material, grams }) => [material, grams])),
    };
    const photographed = DEMO_BAITS.find(({ name }) => name === `elver-${part}`)!;
    const [made, there] = [proposed, photographed].map((bait) =>
      bodyViews(demoBody(WHOLE_DEMO_BOOK, bait), 11, WHOLE_DEMO_BOOK.learned.optics),
    );
    const { bound } = target.parts.find(({ name }) => name === part)!.doubt;
    expect(viewsDifference(made!, there!), part).toBeLessThan(bound);
  }
});
