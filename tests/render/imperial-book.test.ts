import { describe, expect, test } from 'vitest';
import { FILES, PAGES } from '../../src/render/pages.ts';
import { bookOf, contextOf, pageOf, SAMPLE_FILES } from './sample-book.ts';

const file = (front: string): string => `---\n${front}\n---\n`;

/** The sample book as somebody writes it who measures in inches, ounces and degrees Fahrenheit. */
const IMPERIAL_FILES = {
  ...SAMPLE_FILES,
  'book.md': file(
    'title: Back Shed\nunits: { volume: fl oz, temperature: °F, currency: $ }\ntools: { scale: 0.01 g }\ncup: 8 fl oz',
  ),
  'shelf/plastics/supple.md': file(
    'title: Supple\nprice: 16.5\npack: 1 qt\nstock: 3 fl oz\nhighest: 365 °F\nworking: { from: 320 °F, to: 350 °F }',
  ),
  'shelf/colorants/peat.md': file(
    'title: Peat\nprice: 8\npack: 1 fl oz\nstock: 0.7 fl oz\nlook: { kind: dye, colour: "#8a5a2b", dose: 7 drops per 4 fl oz, thickness: 1/8 in }',
  ),
  'shelf/powders/ivory-pearl.md': file(
    'title: Ivory Pearl\nprice: 12\npack: 1 lb\nstock: 1 lb\nlook: { kind: pearl, colour: "#e8e0cc", dose: 1 g per 100 ml }',
  ),
  'molds/minnow-3.md': file(
    'title: Minnow\ncavities: 3\ncavity: 0.19 fl oz\nsprue: 1/3 fl oz\nbody: 3/8 in\nthin: 0.07 in\nlength: 6 in\nbag: 7',
  ),
  'targets/rack.md': file(
    'title: On the rack\nover-white: "#a08050"\nover-black: "#504030"\nmold: minnow-3\nthickness: 3/8 in\nflake: [{ colour: "#b8693a", size: 0.040 in }]',
  ),
};
const IMPERIAL = bookOf(IMPERIAL_FILES);

/** The same as its maker has it, with stock and prices. */
const MAKERS = bookOf(IMPERIAL_FILES, 'mine');

/** What a reader sees or hears of a page: its text, and the labels of pictures and fields. */
function readable(page: string): string {
  const text = page.replace(/<script[\s\S]*?<\/script>/g, ' ');
  const labels = [...text.matchAll(/\s(?:aria-label|alt|title|content|placeholder|label)="([^"]*)"/g)].map(
    ([, label]) => label,
  );
  return `${text.replace(/<[^>]*>/g, ' ')} ${labels.join(' ')}`;
}

/** Every text in data, except the files as their makers wrote them. */
function texts(value: unknown, key = ''): readonly string[] {
  if (typeof value === 'string') return key === 'source' ? [] : [value];
  if (typeof value !== 'object' || value === null || key === 'source') return [];
  return Object.entries(value).flatMap(([name, each]) => texts(each, name));
}

const RAW = /\d*\.\d{5,}/g;

const pages: (readonly [string, string])[] = [];
for (const kind of PAGES) {
  for (const item of kind.items(IMPERIAL)) {
    const url = kind.url(item);
    pages.push([url, readable(kind.render(await contextOf(IMPERIAL, url), item))]);
  }
}

describe('a book in inches and fluid ounces', () => {
  test('shows no number with more than four decimals on any page or card', () => {
    for (const [url, text] of pages) expect([url, text.match(RAW)]).toEqual([url, null]);
  });

  test('has none in the texts of its data', () => {
    for (const kind of FILES) {
      for (const item of kind.items(IMPERIAL)) {
        // What is no data is a maker's own file, a drawing, or what a page's script works with.
        if (!/\.(?:json|webmanifest)$/.test(kind.url(item))) continue;
        const found = texts(JSON.parse(kind.text(IMPERIAL, item, {}))).flatMap((text) => text.match(RAW) ?? []);
        expect([kind.kind, item, found]).toEqual([kind.kind, item, []]);
      }
    }
  });

  test('shows lengths in inches', async () => {
    const recipe = readable(await pageOf('recipe', 'weir-foam', IMPERIAL));
    expect(recipe).toContain('Body, 0.375 in');
    expect(recipe).toContain('Tail, 0.07 in');
    const mold = readable(await pageOf('mold', 'minnow-3', IMPERIAL));
    expect(mold).toMatch(/0\.375 in thick/);
    expect(mold).toMatch(/Length\s+6 in/);
    expect(recipe).toContain(' 1/2 in ');
    // What plastic swallows and scatters is stated per millimetre everywhere; beside a film that is not measured stands both.
    const own = /(?:film of [\d.]+ in \([\d.]+|105 × 148|per) mm/g;
    for (const [url, text] of pages) {
      if (!/^(colours\/[^/]+|molds\/[^/]+|targets\/[^/]+|shelf\/.*|match)\/$/.test(url)) continue;
      expect([url, text.replaceAll(own, '').match(/.{20} mm\b/g)]).toEqual([url, null]);
    }
  });

  test('shows the size of a flake in inches alone, and what a level teaspoon weighs', async () => {
    const flake = readable(await pageOf('material', 'copper-hex-040', IMPERIAL));
    expect(flake).toMatch(/Size\s+0\.040 in\s/);
    expect(flake).toMatch(/Film\s+0\.001 in\s/);
    expect(flake).toMatch(/One level tsp\s+[\d.]+ g/);
    expect(flake).not.toContain('A level ml');
  });

  test('shows heat in degrees Fahrenheit', async () => {
    for (const [url, text] of pages) expect([url, text.match(/.{20}°C/g)]).toEqual([url, null]);
    const heat = async (id: string): Promise<string> =>
      readable(await pageOf('recipe', id, IMPERIAL)).replace(/\s+/g, ' ');
    // The flake stands 182 °C, 359.6 °F: what may not be exceeded is never rounded up.
    expect(await heat('alder-smoke')).toContain(
      'Never above 359 °F Copper hexagon sets the limit. Pour at 320 to 350 °F.',
    );
    expect(await heat('weir-foam')).toContain('Heated to 340 °F.');
    expect(readable(await pageOf('material', 'supple', IMPERIAL))).toMatch(
      /Max temperature\s+365 °F\s+Pour at\s+320 °F to 350 °F/,
    );
  });

  test('states doses for four fluid ounces', async () => {
    for (const [url, text] of pages) expect([url, text.match(/.{20}100 ml/g)]).toEqual([url, null]);
    expect(readable(await pageOf('recipe', 'alder-smoke', IMPERIAL))).toMatch(/in 4 fl oz/);
  });
});

test('the Match page asks for fluid ounces, four of them in a cup to begin with', async () => {
  const page = await pageOf('match', '', IMPERIAL);
  expect(page).toMatch(/Cup size, fl oz<\/label><input[^>]* value="4">/);
  expect(readable(page)).not.toMatch(/millilitre/i);
});

test('a material that has run out says so, on its page and on the shelf', async () => {
  const gone = {
    'shelf/colorants/peat.md': SAMPLE_FILES['shelf/colorants/peat.md']!.replace('stock: 3 ml', 'stock: 0'),
  };
  const book = bookOf({ ...SAMPLE_FILES, ...gone }, 'mine');
  expect(readable(await pageOf('material', 'peat', book))).toMatch(/In stock\s+none\b/);
  expect(readable(await pageOf('shelf', '', book))).toContain('none left');
  expect(readable(await pageOf('recipe', 'weir-foam', book))).toMatch(/[\d.]+ ml short: buy 1 pack\b/);
});

test('a pack and a stock stand as they are bought, by volume where the file has one', async () => {
  const supple = readable(await pageOf('material', 'supple', MAKERS));
  expect(supple).toMatch(/\$16\.50 for 1 qt/);
  expect(supple).toMatch(/In stock\s+3 fl oz/);
  const costs = readable(await pageOf('recipe', 'weir-foam', MAKERS));
  expect(costs).toMatch(/[\d.]+ fl oz short: buy 1 pack\b/);
});

test('what is bought by the pound is told in pounds and ounces, on its page, on the shelf and for a batch', async () => {
  expect(readable(await pageOf('material', 'ivory-pearl', MAKERS))).toMatch(/for 1 lb\s+In stock\s+1 lb\s/);
  expect(readable(await pageOf('shelf', '', MAKERS))).toMatch(/Ivory Pearl[^<]* 1 lb left/);
  const costs = readable(await pageOf('recipe', 'alder-smoke', MAKERS));
  expect(costs).toMatch(/[\d.]+ (?:oz|lb) left afterwards/);
});

test('a material tells how much of it each colour takes in drops, with the grams', async () => {
  const peat = readable(await pageOf('material', 'peat', IMPERIAL)).replaceAll('\u00a0', ' ');
  expect(peat).toMatch(/, back\s*: \d+ drops? \([\d.]+ g\) in 4 fl oz/);
});

test('a round that burnt its cup says so on the recipe’s page, in °F, with a link to the cautions', async () => {
  const burnt = SAMPLE_FILES['colours/weir-foam.md']!.replace('heat: 171 °C', 'heat: 430 °F');
  const book = bookOf({
    ...SAMPLE_FILES,
    'book.md': file('title: Back Shed\nunits: { temperature: °F }'),
    'colours/weir-foam.md': burnt,
  });
  const page = await pageOf('recipe', 'weir-foam', book);
  expect(page.replaceAll('\u00a0', ' ')).toContain('Heated to 430 °F.');
  expect(page).toMatch(
    /<strong>Too hot: vinyl breaks down at this heat and gives off hydrogen chloride\. This cup is spent\.<\/strong> If it happens to you: <a href="[^"]*care\/#smoke">leave the cup, switch off, get out<\/a>\./,
  );
});
