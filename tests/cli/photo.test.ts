import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromLinear } from '../../src/optics/display.ts';
import { photoSet } from '../photo/simulated/photo-sets.ts';
import { printedCard } from '../photo/simulated/printed-card.ts';
import { type SimulatedPhoto, takePhoto } from '../photo/simulated/simulated-photo.ts';
import { type Ran, runCupbook } from '../run-cupbook.ts';
import { smallBook, temporaryFolder } from '../small-book.ts';
import { leaveAsFound } from './leave-as-found.ts';
import { runHere } from './run-here.ts';

leaveAsFound();

/** As a careful maker takes them, and no larger than it takes. */
const CAREFUL = {
  ...photoSet('b2'),
  width: 1800,
  height: 1350,
  tilt: 12,
  gradient: 0.1,
  shadow: 0,
  mixed: 0,
  glare: 0.2,
};

/** Two photos of an orange bait with silver flake, and one of a blue bait. */
let [first, second, other]: readonly SimulatedPhoto[] = [];
let files: Readonly<Record<string, Uint8Array>>;

beforeAll(async () => {
  const card = await printedCard();
  first = await takePhoto(CAREFUL, card, { bait: 7, photo: 1 });
  second = await takePhoto(CAREFUL, card, { bait: 7, photo: 2 });
  other = await takePhoto(CAREFUL, card, { bait: 12, photo: 4 });
  const burnt = await sharp(first.jpeg).linear(2, 0).jpeg().toBuffer();
  const heic = Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from('ftypheic'), Buffer.alloc(300)]);
  files = {
    'one.jpg': first.jpeg,
    'two.jpg': second.jpeg,
    'blue.jpg': other.jpeg,
    'burnt.jpg': burnt,
    'live.heic': heic,
  };
}, 300_000);

/** A folder with the photos. */
function photos(): string {
  const folder = temporaryFolder();
  for (const [name, bytes] of Object.entries(files)) writeFileSync(join(folder, name), bytes);
  mkdirSync(join(folder, 'more'));
  return folder;
}

async function photo(...line: readonly string[]): Promise<Ran> {
  const recipes = line.includes('--recipes') ? [] : ['--recipes', await smallBook()];
  return runHere(['photo', ...line, ...recipes], photos());
}

/** The setting of a print whose values an instrument has read. */
function certified({ truth: { print } }: SimulatedPhoto): string {
  const lab = ([r, g, b]: readonly [number, number, number]): string => {
    const { L, a, b: blue } = labFromLinear({ r, g, b });
    return `{ lab: [${[L, a, blue].map((value) => value.toFixed(1)).join(', ')}] }`;
  };
  return [
    'measuring-card:',
    `  scale: ${print.scaleMm.toFixed(1)} mm`,
    `  paper: ${lab(print.paper)}`,
    `  black: ${lab(print.black)}`,
    `  greys: [${print.greys.map(lab).join(', ')}]`,
  ].join('\n');
}

const bookWith = (front: string): Promise<string> =>
  smallBook({ 'book.md': `---\ntitle: A Small Book\n${front}\n---\nOurs.\n` });

describe('cupbook photo PHOTO', () => {
  test('says the colours, how well it hides, how sure that is, flake and width, and what they rest on', async () => {
    const { code, stdout, stderr } = await photo('one.jpg');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    for (const line of [
      /^Over white: #[\da-f]{6} \(L \d+\.\d, a -?\d+\.\d, b -?\d+\.\d/m,
      /^Over black: #[\da-f]{6} \(/m,
      /^Hides \d+ %, nine in ten within \d+ %\.$/m,
      /^Nine in ten photos like this are within ΔE \d+; most of that is .+\./m,
      /^Flake: #[\da-f]{6}, \d\.\d+ mm across, shows on /m,
      /^Width: \d/m,
      /book\.md says nothing of your card \(measuring-card\), so its 80 mm are taken at their word/,
    ])
      expect(stdout).toMatch(line);
  });

  test.each([
    ['as most prints are', () => ''],
    ['certified', () => certified(first!)],
  ])('is as near to the truth as it says, the card %s', async (_, setting) => {
    const { stdout } = await photo('one.jpg', '--json', '--recipes', await bookWith(setting()));
    const { bait } = JSON.parse(stdout);
    const { overWhite, overBlack, contrast } = first!.truth;
    for (const [found, there] of [
      [bait.overWhite, overWhite],
      [bait.overBlack, overBlack],
    ])
      expect(deltaE00(found, there)).toBeLessThan(bait.doubt.bound);
    expect(Math.abs(bait.contrast.ratio - contrast)).toBeLessThan(bait.contrast.bound);
  });

  test('a printed scale that is longer makes the bait wider by as much', async () => {
    const widthBy = async (setting: string): Promise<number> =>
      JSON.parse((await photo('one.jpg', '--json', '--recipes', await bookWith(setting))).stdout).bait.widthMm;
    expect((await widthBy('measuring-card: { scale: 84 mm }')) / (await widthBy(''))).toBeCloseTo(84 / 80, 6);
  });

  test('gives lines that stand in a chip and in a target as they are', async () => {
    const { stdout } = await photo('one.jpg', '--camera', "Ida's phone");
    const [, look, flake] = /or a chip:\n([\s\S]+?)\n\n.*for a target alone:\n([\s\S]+)$/.exec(stdout)! as unknown as [
      string,
      string,
      string,
    ];
    expect(look).toContain("camera: Ida's phone");
    const cup = 'plastic: 100 ml supple\nadd: { peat: 3 drops }';
    const recipes = await smallBook({
      'chips/peat-a-little.md': `---\ntitle: Peat, a little\n${cup}\nseen:\n  thickness: 6 mm\n${look.replace(/^/gm, '  ')}\n---\nIn clear plastic.\n`,
      'targets/seen-on-the-card.md': `---\ntitle: Seen on the card\n${look}\n${flake}---\nIt came by post.\n`,
    });
    expect(await runHere(['check', '--recipes', recipes])).toMatchObject({
      code: 0,
      stdout: expect.stringMatching(/^no errors.* in 7 files/m),
    });
  });

  test('a line along the bait is taken for where it lies', async () => {
    const along = [-25, 25]
      .map((x) =>
        first!
          .toPixel(...onBait(x))
          .map(Math.round)
          .join(','),
      )
      .join(' ');
    const { code, stdout } = await photo('one.jpg', '--json', '--bait', along);
    expect(code).toBe(0);
    const { overWhite } = JSON.parse(stdout).bait;
    const found = JSON.parse((await photo('one.jpg', '--json')).stdout).bait.overWhite;
    expect(deltaE00(overWhite, found)).toBeLessThan(3);
  });
});

/** A place so far along the bait's middle, mm of the card. */
function onBait(along: number): readonly [number, number] {
  const { bait, print } = first!.scene;
  const { at, turned } = bait.shape;
  return [(at[0] + along * Math.cos(turned)) / print.scale, (at[1] + along * Math.sin(turned)) / print.scale];
}

describe('cupbook photo with several photos', () => {
  test('tells each, and the mean of those that tell something; the others are told of with what to do', async () => {
    const { code, stdout, stderr } = await photo('one.jpg', 'burnt.jpg', 'two.jpg', 'live.heic', 'gone.jpg', 'more');
    expect(code).toBe(1);
    expect(stdout).toMatch(
      /^one\.jpg: over white #.+; over black #.+\ntwo\.jpg: over white #.+\n\nThe mean of 2 photos:\nOver white/,
    );
    expect(stdout).toContain('results of 2 photos like these');
    const told = stderr.trimEnd().split('\n');
    expect(told).toHaveLength(4);
    expect(told[0]).toMatch(/^burnt\.jpg: The photo is too bright: .+ Tap the white paper on the screen/);
    expect(told[1]).toMatch(
      /^live\.heic: This is a HEIC picture; it takes a JPEG, PNG or WebP picture\. .+ save it as JPEG/,
    );
    expect(told[2]).toMatch(/^gone\.jpg: This file or folder is not there/);
    expect(told[3]).toMatch(/^more: This is a folder; it takes photos\. Name the photos in it/);
  });

  test('--json has all of it, in a process of its own as well', async () => {
    const line = ['photo', 'one.jpg', 'burnt.jpg', 'two.jpg', 'live.heic', '--json', '--recipes', await smallBook()];
    const { code, stdout, stderr } = await runCupbook(line, photos());
    expect({ code, stderr }).toEqual({ code: 1, stderr: '' });
    const told = JSON.parse(stdout);
    expect(told).toEqual({
      card: { scaleMm: 80, certified: false, says: expect.stringContaining('measuring-card') },
      photos: [
        { file: 'one.jpg', measured: expect.objectContaining({ kind: 'measured', card: 'small' }) },
        {
          file: 'burnt.jpg',
          refused: { kind: 'refused', reason: 'too-bright' },
          says: expect.stringContaining('Tap the white paper'),
        },
        { file: 'two.jpg', measured: expect.objectContaining({ kind: 'measured' }) },
        { file: 'live.heic', refused: { reason: 'unreadable' }, says: expect.stringContaining('HEIC') },
      ],
      bait: expect.objectContaining({
        photos: 2,
        says: expect.any(Array),
        text: expect.stringContaining('over-white'),
      }),
    });
    const { bait } = told;
    expect(bait.fields).toMatchObject({ doubt: expect.any(Number), camera: 'phone' });
    expect(bait.flake[0]).toEqual({
      colour: expect.any(String),
      size: expect.any(String),
      coverage: expect.any(String),
    });
    const [one, , two] = told.photos;
    expect(bait.overWhite.L).toBeCloseTo((one.measured.overWhite.L + two.measured.overWhite.L) / 2, 9);
    expect(bait.doubt.bound).toBeLessThan(one.measured.doubt.bound);
  });

  test('warns of photos that are hardly of one bait, and by how much each is off', async () => {
    const { code, stdout } = await photo('one.jpg', 'blue.jpg');
    expect(code).toBe(0);
    expect(stdout).toMatch(/^one\.jpg: over white #[\da-f]{6}, ΔE \d+ from the mean; over black /m);
    expect(stdout).toMatch(/The mean of 2 photos:\nThese photos differ by more than they should\./);
  });

  test('none of them tells anything: nothing but why', async () => {
    const { code, stdout, stderr } = await photo('burnt.jpg');
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(stderr).toContain('too bright');
  });
});

describe('cupbook photo and the book', () => {
  test('a folder without a book, and a book with errors, are said, and the photo is measured all the same', async () => {
    const bare = await photo('one.jpg', '--recipes', temporaryFolder());
    expect(bare).toMatchObject({ code: 0, stderr: '' });
    expect(bare.stdout).toContain('There is no book.md in ');
    const faulty = await photo('one.jpg', '--recipes', await bookWith('measuring-card: { scale: 79 mm, paper: pink }'));
    expect(faulty).toMatchObject({ code: 0, stderr: expect.stringContaining('book.md has errors') });
    expect(faulty.stdout).toContain('Over white');
  });

  test('a folder that is not there is a slip, and nothing is measured', async () => {
    const { code, stdout, stderr } = await photo('one.jpg', '--recipes', join(temporaryFolder(), 'nowhere'));
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(stderr).toContain('There is no folder ');
  });

  test('a book in fluid ounces has its lengths in inches', async () => {
    const { stdout } = await photo('one.jpg', '--recipes', await bookWith('units: { volume: fl oz }'));
    expect(stdout).toMatch(/^Width: 0\.\d+ in$/m);
  });
});

test.each([
  [
    ['--bait', '1,2'],
    '--bait takes two places, in pixels from the left and from the top: "410,980 1620,1010", not "1,2".',
  ],
  [['./one.jpg'], './one.jpg is named twice. Only another photo makes the mean surer.'],
  [['--bait', '1,2 3,4; 5,6 7,8'], '--bait has 2 lines for 1 photo: give one for each, with ; between them.'],
])('photo one.jpg %j is refused', async (options, sentence) => {
  const { code, stdout, stderr } = await photo('one.jpg', ...options);
  expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
  expect(stderr).toContain(sentence);
});

test('photo without a photo is a wrong line', async () => {
  expect(await photo()).toMatchObject({ code: 2, stderr: expect.stringContaining('"photo" needs more words') });
});
