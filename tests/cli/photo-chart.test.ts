import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { CARDS, GREY_VALUES, type Place } from '../../src/measuring-card/measuring-card.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromLinear } from '../../src/optics/display.ts';
import type { Pixels } from '../../src/photo/pixels.ts';
import { type Look, seenAt } from '../photo/card/seen-card.ts';
import { chartCorners, INK, type LyingChart, PAPER, photoOfBoth } from '../photo/certify/card-and-chart.ts';
import { type Ran, runCupbook } from '../run-cupbook.ts';
import { smallBook, temporaryFolder } from '../small-book.ts';
import { leaveAsFound } from './leave-as-found.ts';
import { runHere } from './run-here.ts';

leaveAsFound();

const LOOK: Look = { width: 1060, height: 560, perMm: 4.2, tilt: 6, aside: { x: -180, y: 0 } };
const CHART: LyingChart = { at: { x: CARDS.small.width + 20, y: 28 }, pitch: 13, turn: 2 };
const even = ({ x, y }: Place): number => 0.7 * Math.exp(0.0006 * x - 0.0005 * y);

let both: Uint8Array;
let bare: Uint8Array;
beforeAll(async () => {
  [both, bare] = (await Promise.all(
    [CHART, undefined].map(async (chart) => pngOf(await photoOfBoth(LOOK, chart, { light: even }))),
  )) as [Uint8Array, Uint8Array];
}, 300_000);

function pngOf({ data, width, height }: Pixels): Promise<Uint8Array> {
  return sharp(Uint8Array.from(data), { raw: { width, height, channels: 4 } })
    .png({ compressionLevel: 1 })
    .toBuffer();
}

/** Asks of a photo in a folder of its own. */
async function photo(png: Uint8Array, ...line: readonly string[]): Promise<Ran> {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'card.png'), png);
  return runHere(['photo', 'card.png', ...line], folder);
}

const bookWith = (front: string): Promise<string> =>
  smallBook({ 'book.md': `---\ntitle: A Small Book\n${front}---\nOurs.\n` });

describe('cupbook photo --chart', () => {
  test('gives the setting for book.md, as near to what the print is as it says, and check takes it', async () => {
    const recipes = await bookWith('measuring-card: { scale: 79.6 mm }\n');
    const { code, stdout, stderr } = await photo(both, '--chart', '--recipes', recipes);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(
      /^Your card is measured: its paper and each of its greys are within ΔE \d\.\d, nine times in ten\. /,
    );
    const setting = stdout.slice(stdout.indexOf('measuring-card:\n'));
    expect(setting).toContain('  scale: 79.6 mm\n');
    const certified = await bookWith(setting);
    expect(await runHere(['check', '--strict', '--recipes', certified])).toMatchObject({ code: 0, stderr: '' });
    const asked = await photo(bare, '--json', '--recipes', certified);
    expect(JSON.parse(asked.stdout).card).toMatchObject({ scaleMm: 79.6, certified: true });
  });

  test('--json has the same as data, in a process of its own as well, and says that no photo knows the length', async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'card.png'), both);
    const { code, stdout, stderr } = await runCupbook(
      ['photo', 'card.png', '--chart', '--json', '--recipes', await smallBook()],
      folder,
    );
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    const { certified, fields, says, text } = JSON.parse(stdout);
    expect(fields['measuring-card']).not.toHaveProperty('scale');
    expect(says).toContain('lay a ruler on them');
    expect(text).toContain('measuring-card:\n');
    const off = ({ r, g, b }: { r: number; g: number; b: number }, there: readonly number[]): number =>
      deltaE00(labFromLinear({ r, g, b }), labFromLinear({ r: there[0]!, g: there[1]!, b: there[2]! }));
    expect(off(certified.paper, PAPER)).toBeLessThan(certified.bound);
    GREY_VALUES.forEach((value, step) => {
      const part = INK + (1 - INK) * lightOf(value);
      expect(
        off(
          certified.greys[step],
          PAPER.map((paper) => paper * part),
        ),
      ).toBeLessThan(certified.bound);
    });
  });

  test('takes the corners of the chart where they are said, in any order', async () => {
    const corners = chartCorners(CHART)
      .map((corner) => seenAt(CARDS.small, LOOK, corner))
      .map(({ x, y }) => `${x.toFixed(0)},${y.toFixed(0)}`);
    const said = await photo(both, '--json', '--corners', corners.reverse().join(' '));
    const found = await photo(both, '--json', '--chart');
    const paper = ({ stdout }: Ran) => labFromLinear(JSON.parse(stdout).certified.paper);
    expect(deltaE00(paper(said), paper(found))).toBeLessThan(0.5);
  });

  test.each([
    ['a photo without a chart', () => bare, ['--chart'], 'There is no colour chart to be seen beside the card.'],
    ['corners that are none', () => both, ['--corners', '300,200 500,200 500,300 300,300'], 'There is no colour chart'],
    ['three corners', () => both, ['--corners', '1,2 3,4 5,6'], '--corners takes four places, in pixels from the left'],
    [
      'a corner outside',
      () => both,
      ['--corners', '1,2 3,4 5,6 7000,8'],
      'A corner of --corners lies outside the photo',
    ],
    ['two photos', () => both, ['card.png', '--chart'], '--chart takes one photo'],
    ['a bait', () => both, ['--chart', '--bait', '1,2 3,4'], '--chart measures the card, and no bait'],
  ] as const)('refuses %s, with the reason', async (_, png, line, sentence) => {
    const { code, stdout, stderr } = await photo(png(), ...line);
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(stderr).toContain(sentence);
  });

  test('a refusal under --json is JSON', async () => {
    const { code, stdout } = await photo(bare, '--chart', '--json');
    expect(code).toBe(1);
    expect(JSON.parse(stdout)).toEqual({ error: expect.stringContaining('There is no colour chart') });
  });
});

/** The curve of IEC 61966-2-1. */
function lightOf(byte: number): number {
  const v = byte / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
}
