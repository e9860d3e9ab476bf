import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import { EXAMPLE_BOOK } from '../../src/diagnostics/examples.ts';
import { compileWith, file } from './sample.ts';

const say = ({ file: path, start, severity, code, found, expected, why, fix, related = [] }: Diagnostic): string =>
  [
    `${path}:${start.line}:${start.column} ${severity} ${code} Unexpected ${found}, expected ${expected}, because ${why} → ${fix}`,
    ...related.map((each) => `${each.file}:${each.start.line}:${each.start.column} ${each.message}`),
  ].join(' | ');
const told = (files: Readonly<Record<string, string>>): readonly string[] => compileWith(files).diagnostics.map(say);
const smoke = (front: string, notes = ''): Record<string, string> => ({
  'colours/smoke.md': file(`${front}\nmold: minnow\ncups: { body: { plastic: 120 ml supple } }`, notes),
});
const HIDDEN = 'nobody sees it, and a search does not find the word that it is in';
const TURNS = 'it turns the letters beside it round, so a reader sees something else than you wrote';
const ORDER = 'it is an order to a machine, and no page may hold it';

describe('signs that nobody sees', () => {
  test('in a title are an error at the sign, with the title without it', () => {
    expect(told(smoke('title: Per\u200bch \u202egnp'))).toEqual([
      `colours/smoke.md:2:11 error file/unseen-sign Unexpected invisible sign U+200B, the first of 2 such signs, expected signs that are seen, because ${HIDDEN} → write \`Perch gnp\``,
    ]);
  });
  test('that are all of a title leave nothing to write', () => {
    expect(told(smoke('title: "\u200b"'))).toEqual([
      `colours/smoke.md:2:9 error file/unseen-sign Unexpected invisible sign U+200B, expected signs that are seen, because ${HIDDEN} → write a text that can be read`,
    ]);
  });
  test('that YAML makes of an escape are an error at the value', () => {
    expect(told(smoke('title: "Sm\\u202eoke"'))).toEqual([
      `colours/smoke.md:2:8 error file/unseen-sign Unexpected turning sign U+202E, expected signs that are seen, because ${TURNS} → write \`Smoke\``,
    ]);
    expect(told(smoke('title: "Smo\\0ke"'))).toEqual([
      `colours/smoke.md:2:8 error file/unseen-sign Unexpected control sign U+0000, expected signs that are seen, because ${ORDER} → write \`Smoke\``,
    ]);
    expect(told(smoke('title: "Smo\\uD800ke"'))).toEqual([
      `colours/smoke.md:2:8 error file/unseen-sign Unexpected control sign U+D800, expected signs that are seen, because ${ORDER} → write \`Smoke\``,
    ]);
  });
  test('in a tag, a note, the name of a field and a comment are told each', () => {
    expect(
      told(smoke('title: Smoke # a\u2066b\ntags: [mud\u001b, "clear"]')).map((line) => line.split(' U')[0]),
    ).toEqual(['colours/smoke.md:2:17 error file/unseen-sign', 'colours/smoke.md:3:11 error file/unseen-sign']);
  });
  test('in the notes are told once, with how many there are, entities too', () => {
    expect(told(smoke('title: Smoke', 'Two lines.\nThe o\u202eld &#8238;one.\n'))).toEqual([
      `colours/smoke.md:7:6 error file/unseen-sign Unexpected turning sign U+202E, the first of 2 such signs, expected signs that are seen, because ${TURNS} → remove them`,
    ]);
  });
  test('that do their work live', () => {
    expect(
      told(
        smoke(
          'title: Auf\u200clage 👩‍🔬 1️⃣\ntags: [می\u200cخواهم]',
          'Ein Kenn\u00adzeichen 🏴\u{e0067}\u{e0062}\u{e0073}\u{e0063}\u{e0074}\u{e007f}.',
        ),
      ),
    ).toEqual([]);
  });
  test('do not hide another fault of the file', () => {
    expect(told(smoke('title: Sm\u200boke\nbaits: many')).map((line) => line.split(' ')[2])).toEqual([
      'file/unseen-sign',
      'field/type',
    ]);
  });
});

describe('titles', () => {
  test('that look alike are a warning at the second, with the place of the first', () => {
    expect(told({ 'colours/dusk.md': file('title: "  SMOKE"\nfrom: smoke') })).toEqual([
      'colours/smoke.md:2:8 warning file/same-title Unexpected second recipe with the title `Smoke`, expected a title of its own, because on the page, on cards and in search nobody can tell the two apart → give one of them another title | colours/dusk.md:2:8 the first is `SMOKE`',
    ]);
    const alike = ['Dusk  Mud', 'dusk mud', 'Du\u200csk Mud', 'Ｄusk Mud'];
    const files = Object.fromEntries(
      alike.map((title, at) => [`colours/dusk-${at}.md`, file(`title: ${title}\nfrom: smoke`)]),
    );
    expect(told(files)).toHaveLength(3);
  });
  test('of different kinds may be the same', () => {
    expect(told({ 'targets/smoke.md': file('title: Smoke\nover-white: "#7a6a4c"') })).toEqual([]);
    const flake = file('title: Frost\nsize: 1 mm\nlook: { colour: "#e8e4da" }');
    expect(told({ 'shelf/flakes/frost-flake.md': flake })).toEqual([]);
  });
  test('in curly quotes are a warning, in straight ones around them not', () => {
    expect(told(smoke('title: “Smoke”'))).toEqual([
      'colours/smoke.md:2:8 warning file/quoted-title Unexpected `“Smoke”` in curly quotes, expected a title without quotes, or in straight ones, because YAML takes curly quotes for letters of the title → write `Smoke`, or `"“Smoke”"` if they belong to it',
    ]);
    expect(told(smoke('title: "“Smoke”"'))).toEqual([]);
    expect(told(smoke('title: The “old” smoke’s'))).toEqual([]);
  });
});

describe('bounds', () => {
  test('of a title, a tag and a note', () => {
    expect(told(smoke(`title: ${'a'.repeat(200_000)}`))).toEqual([
      'colours/smoke.md:2:8 error field/too-long Unexpected text of 200000 letters, expected at most 320, because it has one line of a page → shorten it, and put the rest into the notes',
    ]);
    expect(told(smoke(`title: ${'a'.repeat(320)}\ntags: [${'b'.repeat(255)}]`))).toEqual([]);
    expect(told(smoke(`title: Smoke\ntags: [${'b'.repeat(256)}]`))).toHaveLength(1);
  });
  test('of the cups, before any of them is computed', () => {
    const cups = (count: number): Record<string, string> => ({
      'colours/smoke.md': file(
        `title: Smoke\nmold: minnow\npattern: layered\ncups:\n${Array.from({ length: count }, (_, at) => `  c${at}: { plastic: 9 ml supple }`).join('\n')}`,
      ),
    });
    expect(told(cups(1000))).toEqual([
      'colours/smoke.md:5:1 error field/too-long Unexpected 1000 cups, expected at most 12, because a bait is poured from one to three, and each is computed at length → make several recipes of them',
    ]);
    expect(told(cups(12))).toEqual([]);
  });
  test('of the name of a cup', () => {
    const name = 'a'.repeat(61);
    expect(
      told({ 'colours/smoke.md': file(`title: Smoke\nmold: minnow\ncups:\n  ${name}: { plastic: 120 ml supple }`) }),
    ).toEqual([
      'colours/smoke.md:5:3 error file/name Unexpected cup with a name of 61 letters, expected at most 60, because it has one line of a card → shorten it',
    ]);
  });
});

describe('numbers as programs write them', () => {
  test.each([
    ['0x10', '16'],
    ['0o17', '15'],
    ['1e3', '1000'],
    ['2.5e1', '25'],
  ])('baits: %s', (written, plain) => {
    expect(told(smoke(`title: Smoke\nbaits: ${written}`))).toEqual([
      `colours/smoke.md:3:8 error field/type Unexpected \`${written}\`, expected a whole number from 1 to 1000000, because a number is digits without gaps, with a point before its decimals → write \`${plain}\``,
    ]);
  });
  test('an amount', () => {
    expect(
      told({
        'colours/smoke.md': file(
          'title: Smoke\nmold: minnow\ncups: { body: { plastic: 1.2e2 ml supple, add: { peat: 0x1F drops } } }',
        ),
      }).map((line) => line.split(' → ')[1]),
    ).toEqual(['write `120 ml supple`', 'write `31 drops`']);
  });
  test('a title may look like one', () => {
    for (const title of ['1e3', '0x10', '.nan', '1.10']) {
      expect(compileWith(smoke(`title: ${title}`)).book!.recipes[0]!.title).toBe(title);
    }
  });
});

describe('the address of the site', () => {
  const address = (text: string): readonly string[] => told({ 'book.md': file(`title: B\naddress: ${text}`) });
  test('has no password', () => {
    expect(address('https://user:pw@book.example/mud/?x#y')).toEqual([
      'book.md:3:10 error field/value Unexpected address with a name or password in it, expected an address that the names of pages can stand behind, because it would stand in every page and on every card → write `https://book.example/mud/`',
    ]);
  });
  test('has neither a question nor a fragment', () => {
    expect(address('https://book.example/mud?x')).toEqual([
      'book.md:3:10 error field/value Unexpected `https://book.example/mud?x`, expected an address that the names of pages can stand behind, because nothing can follow what begins with `?` or `#` → write `https://book.example/mud`',
    ]);
  });
  test('is no longer than a QR code holds', () => {
    expect(address(`https://book.example/${'a'.repeat(5000)}`)).toEqual([
      'book.md:3:10 error field/value Unexpected address of 5021 letters, expected at most 500, because it is on every card, and no QR code holds it → undefined',
    ]);
  });
});

test('a day of long ago is an error', () => {
  expect(told(smoke('title: Smoke\nmade: 0206-03-14'))).toEqual([
    'colours/smoke.md:3:7 error field/date Unexpected `0206-03-14`, expected a day of the calendar such as `2026-03-14`, because nobody poured soft plastic then → correct it, or remove the line',
  ]);
});

describe('a day to come', () => {
  const on = (today: string | undefined, made: string): readonly string[] =>
    compileBook(
      Object.entries({ ...EXAMPLE_BOOK, ...smoke(`title: Smoke\nmade: ${made}`) }).map(([path, text]) => ({
        path,
        text,
      })),
      today === undefined ? {} : { today },
    ).diagnostics.map(say);
  test('is a warning, with the year of exchanged digits', () => {
    expect(on('2026-11-30', '2062-03-14')).toEqual([
      'colours/smoke.md:3:7 warning field/day-to-come Unexpected `2062-03-14`, expected a day that is not after 2026-11-30, because nothing was made on it yet → write `2026-03-14`',
    ]);
    expect(on('2026-11-30', '2027-03-14')[0]).toMatch(/→ correct the year$/);
  });
  test('is not tomorrow, which has begun elsewhere, and none where no day is given', () => {
    expect(on('2026-12-31', '2027-01-01')).toEqual([]);
    expect(on('2026-12-31', '2027-01-02')).toHaveLength(1);
    expect(on(undefined, '2062-03-14')).toEqual([]);
  });
});
