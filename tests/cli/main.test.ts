import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { treeHash } from '../folder-tree.ts';
import { ROOT } from '../run-cupbook.ts';
import { smallBook, temporaryFolder } from '../small-book.ts';
import { leaveAsFound } from './leave-as-found.ts';
import { runHere } from './run-here.ts';

interface Said {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

const here = process.cwd();
leaveAsFound();

/** Runs a command line in this process, from a folder, and keeps what it says. */
async function cupbook(line: readonly string[], from: string = here): Promise<Said> {
  const { code, stdout, stderr } = await runHere(line, from);
  return { code, out: stdout, err: stderr };
}

const BROKEN = '---\ntitle: Broken\nmold: minow-3\ncups:\n  body:\n    plastic: 100 ml supple\n---\n';

describe('cupbook', () => {
  test.each([[[]], [['help']], [['--help']], [['help', 'nothing']]])('%j lists the commands', async (line) => {
    const { code, out } = await cupbook(line);
    expect(code).toBe(0);
    for (const name of ['serve', 'build', 'check', 'new', 'batch']) expect(out).toContain(`cupbook ${name}`);
  });

  test.each([[['help', 'new']], [['new', '--help']], [['new', '-h']]])('%j explains one command', async (line) => {
    const { code, out } = await cupbook(line);
    expect(code).toBe(0);
    expect(out).toMatch(/^cupbook new NAME \[--kind KIND\]/);
  });

  test('version says which one it is', async () => {
    expect((await cupbook(['version'])).out).toMatch(/^cupbook \d+\.\d+\.\d+\n$/);
  });

  test.each([
    [['bild'], 'There is no command "bild". Did you mean build?'],
    [['thin', 'reed'], 'The command "thin" is called "let-down" now: cupbook let-down RECIPE[/CUP]'],
    [['zzz'], 'There is no command "zzz". There are: serve, build'],
    [['check', '--jsn'], 'There is no option "--jsn". Did you mean --json?'],
    [['check', '--json=yes'], 'The option --json takes no value.'],
    [['build', '--output'], 'The option --output needs a value: --output DIR.'],
    [['check', 'peat'], '"check" takes no word "peat": cupbook check'],
    [['new'], '"new" needs more words: cupbook new NAME'],
  ])('%j is refused with a sentence and exit code 2', async (line, sentence) => {
    const { code, out, err } = await cupbook(line);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(sentence);
    expect(err.trim().split('\n')).toHaveLength(1);
  });
});

describe('cupbook check', () => {
  test('says nothing but a count, and which book, where there are no errors', async () => {
    const folder = await smallBook();
    expect(await cupbook(['check', '--recipes', folder])).toEqual({
      code: 0,
      out: `no errors in 5 files of ${relative(here, folder)}\n`,
      err: '',
    });
    expect((await cupbook(['check', '--recipes', '.'], folder)).out).toBe('no errors in 5 files of .\n');
  });

  test('says once a book what a look gives away, which fails nothing', async () => {
    const secret = (title: string): string =>
      `---\ntitle: ${title}\nmold: minnow-3\npublish: look\ncups: { body: { plastic: 90 ml supple } }\n---\n`;
    const files = { 'colours/veil.md': secret('Veil'), 'colours/shroud.md': secret('Shroud') };
    const folder = await smallBook(files);
    const { code, out } = await cupbook(['check', '--strict', '--recipes', folder]);
    expect(code).toBe(0);
    expect(out.split('\n').slice(1)).toEqual([
      'note: readers see only the look of Shroud and 1 more: anyone with your materials can match what they see; `publish: no` keeps it to yourself',
      '',
    ]);
    const json = JSON.parse((await cupbook(['check', '--json', '--recipes', folder])).out);
    expect([json.note, json.diagnostics]).toEqual([expect.stringContaining('`publish: no` keeps it'), []]);
  });

  test('shows place, fault and fix of every error, and exits with 1', async () => {
    const { code, out } = await cupbook([
      'check',
      '--recipes',
      await smallBook({ 'colours/broken.md': BROKEN, 'molds/b.md': '' }),
    ]);
    expect(code).toBe(1);
    expect(out).toContain('colours/broken.md:3:7 error recipe/unknown-mold');
    expect(out).toContain('fix: write `minnow-3`');
    expect(out).toContain('molds/b.md:1:1 error front-matter/missing');
    expect(out).toMatch(/2 errors in 7 files of \S+\n$/);
  });

  test('--json gives the same to a program', async () => {
    const { code, out } = await cupbook([
      'check',
      '--json',
      '--recipes',
      await smallBook({ 'colours/broken.md': BROKEN }),
    ]);
    expect(code).toBe(1);
    expect(JSON.parse(out)).toMatchObject({
      errors: 1,
      warnings: 0,
      files: 6,
      diagnostics: [
        { code: 'recipe/unknown-mold', file: 'colours/broken.md', start: { line: 3, column: 7 }, nearest: 'minnow-3' },
      ],
    });
  });

  test('--json is JSON even where the book could not be checked, and counts the warnings that it leaves out', async () => {
    const refused = await cupbook(['check', '--json', '--recipes', 'nowhere'], temporaryFolder());
    expect(refused.code).toBe(1);
    expect(JSON.parse(refused.out)).toEqual({
      error: refused.err.trimEnd(),
      errors: 0,
      warnings: 0,
      files: 0,
      diagnostics: [],
    });
    const wrong = await cupbook(['check', '--json', '--jsn']);
    expect([wrong.code, JSON.parse(wrong.out).error]).toEqual([2, 'There is no option "--jsn". Did you mean --json?']);
    const stray = Object.fromEntries(Array.from({ length: 25 }, (_, index) => [`scans/${index}.md`, 'x']));
    const { out } = await cupbook(['check', '--json', '--recipes', await smallBook(stray)]);
    const { warnings, diagnostics, unshown } = JSON.parse(out);
    expect({ warnings, shown: diagnostics.length, unshown }).toEqual({
      warnings: 25,
      shown: 20,
      unshown: [{ code: 'file/unknown-place', folder: 'scans/', count: 5 }],
    });
  });

  test('finds the photos that a build would refuse', async () => {
    const { code, out } = await cupbook([
      'check',
      '--recipes',
      await smallBook({
        'targets/roach.md': '---\ntitle: Roach\nover-white: "#7a6a4c"\nphoto: roach.jpg\n---\n',
        'photos/roach.jpg': 'no picture',
      }),
    ]);
    expect(code).toBe(1);
    expect(out).toContain('targets/roach.md:4:8 error photo/unreadable');
  });

  test('--strict lets warnings fail', async () => {
    const folder = await smallBook({ 'photos/nobody-names-it.jpg': '' });
    expect((await cupbook(['check', '--recipes', folder])).code).toBe(0);
    expect((await cupbook(['check', '--strict', '--recipes', folder])).code).toBe(1);
  });

  test('takes --recipes from where the command was given, and CUPBOOK_RECIPES without it', async () => {
    const folder = await smallBook();
    expect((await cupbook(['check', '--recipes', 'colours/..'], folder)).out).toContain('5 files');
    vi.stubEnv('CUPBOOK_RECIPES', folder);
    expect((await cupbook(['check'])).out).toContain('5 files');
  });

  test('names a folder that is not there', async () => {
    const { code, err } = await cupbook(['check', '--recipes', 'nowhere'], temporaryFolder());
    expect(code).toBe(1);
    expect(err).toMatch(/^There is no folder .*nowhere\. .*--recipes\.\n$/);
  });
});

/** Fills in fields of a file that was started, whose comments go. */
function fillIn(path: string, values: Readonly<Record<string, string>>): void {
  const text = readFileSync(path, 'utf8').replace(/^( *)([a-z-]+): {2}#.*$/gm, (line, indent: string, name: string) =>
    values[name] === undefined ? line : `${indent}${name}: ${values[name]}`,
  );
  writeFileSync(path, text);
}

describe('cupbook new', () => {
  test.each(['recipe', 'chip', 'colorant', 'powder', 'flake', 'plastic', 'additive', 'mold', 'target'])(
    'NAME --kind %s writes a file without errors, of which check tells what is to be filled in',
    async (kind) => {
      const folder = await smallBook();
      const made = await cupbook(['new', 'Über Reed "2"', '--kind', kind, '--recipes', folder]);
      expect(made).toMatchObject({ code: 0, err: '' });
      const { code, out } = await cupbook(['check', '--recipes', folder]);
      expect(code).toBe(0);
      expect(out).toMatch(
        /\n1 file waits to be filled in; until then it is not in the book\.\nno errors and \d+ warnings? in 6 files of /,
      );
      expect(new Set(out.match(/(?<=warning )\S+\/\S+/g))).toEqual(new Set(['field/to-fill-in']));
      expect((await cupbook(['check', '--strict', '--recipes', folder])).code).toBe(1);
      const [, path = ''] = /(\S+uber-reed-2\.md) is there/.exec(made.out) ?? [];
      const text = readFileSync(join(ROOT, path), 'utf8');
      expect(text).toContain('title: "Über Reed \\"2\\""');
      // What the notes are for is a comment: it would be published as the maker's own.
      expect(text).toMatch(/\n# Below the next line, your notes: .*\n---\n$/);
      if (kind === 'additive') expect(text).toMatch(/\nbulk: {2}# /);
    },
  );

  test('NAME --from RECIPE writes a recipe that comes from it', async () => {
    const folder = await smallBook();
    expect((await cupbook(['new', 'bog-pool-2', '--from', 'bog-pool', '--recipes', folder])).code).toBe(0);
    const text = readFileSync(join(folder, 'colours/bog-pool-2.md'), 'utf8');
    expect(text).toContain('title: Bog Pool 2\n');
    expect(text).toContain('\nfrom: bog-pool\n');
    expect((await cupbook(['check', '--strict', '--recipes', folder])).code).toBe(0);
  });

  test('NAME --from RECIPE shows the change of a cup that is there', async () => {
    const folder = await smallBook();
    await cupbook(['new', 'bog-pool-2', '--from', 'bog-pool', '--recipes', folder]);
    const path = join(folder, 'colours/bog-pool-2.md');
    const shown = readFileSync(path, 'utf8')
      .replace(/^#(?=cups:| {2})/gm, '')
      .replace('some-colorant', 'peat');
    writeFileSync(path, shown);
    expect((await cupbook(['check', '--strict', '--recipes', folder])).code).toBe(0);
    const { out } = await cupbook(['batch', 'bog-pool-2', '--json', '--recipes', folder]);
    expect(JSON.parse(out).cups.map(({ name }: { name: string }) => name)).toEqual(['body']);
  });

  test.each(['recipe', 'chip', 'colorant', 'powder', 'plastic', 'mold', 'target'])(
    'NAME --kind %s speaks the units of the book, and a recipe takes its plastic',
    async (kind) => {
      const units = 'units: { volume: fl oz, temperature: °F, currency: $ }';
      const folder = await smallBook({
        'book.md': `---\ntitle: Ours\n${units}\nplastic: supple\n---\n`,
        'shelf/plastics/a-first.md': '---\ntitle: First\n---\n',
      });
      const { out } = await cupbook(['new', 'reed', '--kind', kind, '--recipes', folder]);
      const text = readFileSync(join(ROOT, /(\S+reed\.md) is there/.exec(out)![1]!), 'utf8');
      expect(text).not.toMatch(/\d ml\b| mm\b|°C/);
      if (kind === 'recipe') expect(text).toContain('plastic:  # how much of which, such as 4 fl oz supple\n');
      expect((await cupbook(['check', '--recipes', folder])).code).toBe(0);
    },
  );

  test('says how to check the book that it wrote into', async () => {
    const folder = await smallBook();
    expect((await cupbook(['new', 'reed', '--recipes', '.'], folder)).out).toMatch(
      /run: npx cupbook check --recipes \.\n$/,
    );
    vi.stubEnv('CUPBOOK_RECIPES', folder);
    expect((await cupbook(['new', 'rush'])).out).toMatch(/run: npx cupbook check\n$/);
  });

  test('starts a whole book in a folder that is not there, kind by kind', async () => {
    const folder = join(temporaryFolder(), 'my/book');
    for (const [name, kind] of [
      ['Our Book', 'book'],
      ['Supple', 'plastic'],
      ['Minnow', 'mold'],
      ['First', 'recipe'],
    ]) {
      expect(await cupbook(['new', name!, '--kind', kind!, '--recipes', folder])).toMatchObject({ code: 0, err: '' });
    }
    const lines = async (): Promise<string> => (await cupbook(['check', '--recipes', folder])).out;
    expect(await lines()).toMatch(
      /\n3 files wait to be filled in; until then they are not in the book\.\nno errors and /,
    );
    fillIn(join(folder, 'colours/first.md'), { plastic: '100 ml supple', add: '{}' });
    expect(await lines()).toMatch(
      /\n2 files wait to be filled in, and 1 more waits for them; until then they are not in the book\.\n/,
    );
    fillIn(join(folder, 'shelf/plastics/supple.md'), {
      hardness: 'soft',
      working: '{ from: 165 °C, to: 175 °C }',
      highest: '190 °C',
    });
    fillIn(join(folder, 'molds/minnow.md'), {
      cavities: '2',
      cavity: '6 ml',
      body: '9 mm',
      thin: '2 mm',
      shape: 'minnow',
    });
    expect(await cupbook(['check', '--strict', '--recipes', folder])).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^no errors in 4 files of /),
    });
  });

  test.each(['chip', 'colorant', 'powder', 'flake', 'additive', 'target'])(
    'NAME --kind %s says beside each empty field what to write, and that is taken',
    async (kind) => {
      const folder = await smallBook();
      const { out } = await cupbook(['new', 'reed', '--kind', kind, '--recipes', folder]);
      const path = join(ROOT, /(\S+reed\.md) is there/.exec(out)![1]!);
      const hints = [...readFileSync(path, 'utf8').matchAll(/^ *([a-z-]+): {2}# (.*)$/gm)];
      expect(hints.length).toBeGreaterThan(0);
      const written = hints.map(([, name, hint]) => [
        name!,
        /such as ("[^"]+"|\{.*?\}|[^:;]+)/.exec(hint!)?.[1] ?? hint!.replace(/,.*| or .*/, ''),
      ]);
      fillIn(
        path,
        Object.fromEntries([
          ...written,
          ...(kind === 'target' || kind === 'chip' ? [['over-black', '"#3a3020"']] : []),
        ]),
      );
      expect(await cupbook(['check', '--strict', '--recipes', folder])).toMatchObject({ code: 0 });
    },
  );

  test('the commands of the bench say which files wait, and work without them', async () => {
    const folder = await smallBook({ 'molds/minnow-4.md': '---\ntitle: Minnow 4\ncavity:\nbody: 9 mm\n---\n' });
    expect(await cupbook(['batch', 'bog-pool', '--recipes', folder])).toMatchObject({
      code: 0,
      err: 'Left out for fields that are still empty, which npx cupbook check shows: molds/minnow-4.md.\n',
    });
    const { code, err } = await cupbook(['batch', 'bog-pool', 'minnow-4=10', '--recipes', folder]);
    expect(code).toBe(1);
    expect(err).toContain('molds/minnow-4.md, or what it needs, is still empty in places');
  });

  test('works in a book that has errors elsewhere', async () => {
    const folder = await smallBook({ 'colours/broken.md': BROKEN });
    expect((await cupbook(['new', 'reed', '--recipes', folder])).code).toBe(0);
    expect((await cupbook(['check', '--recipes', folder])).out).toContain('1 error and 2 warnings in 7 files');
  });

  test.each([
    [['bog-pool'], 'bog-pool.md is already there. Choose another name.'],
    [['Ours', '--kind', 'book'], 'book.md is already there. Its name is always the same: write into that one, or'],
    [['***'], '"***" has no letter or digit'],
    [['reed', '--kind', 'recip'], 'There is no kind "recip". Did you mean recipe?'],
    [['reed', '--from', 'bog-pol'], 'The book has no recipe "bog-pol". Did you mean bog-pool?'],
    [['reed', '--from', 'bog-pool', '--kind', 'mold'], 'Only a recipe comes from another recipe'],
    [['peat', '--kind', 'powder'], 'shelf/powders/peat.md would have errors, so it was not written'],
  ])('%j is refused, and nothing is written', async (line, sentence) => {
    const folder = await smallBook();
    const before = treeHash(folder);
    const { code, err } = await cupbook(['new', ...line, '--recipes', folder]);
    expect(code).toBe(1);
    expect(err).toContain(sentence);
    expect(treeHash(folder)).toBe(before);
  });

  test('says what a recipe still lacks', async () => {
    const folder = temporaryFolder();
    await cupbook(['new', 'Ours', '--kind', 'book', '--recipes', folder]);
    const { code, err } = await cupbook(['new', 'reed', '--recipes', folder]);
    expect(code).toBe(1);
    expect(err).toContain('the book has none yet. Start one first: npx cupbook new NAME --kind');
  });
});

describe('cupbook batch', () => {
  test('works out a plan over several molds, with the caution', async () => {
    const folder = await smallBook({
      'molds/big.md': '---\ntitle: Big\ncavity: 20 ml\nbody: 15 mm\nthin: 3 mm\n---\n',
    });
    const { code, out } = await cupbook(['batch', 'bog-pool', 'minnow-3=20', 'big=5', '--recipes', folder]);
    expect(code).toBe(0);
    expect(out).toMatch(/^Bog Pool: 20 baits in minnow-3 \(10 shots\), 5 baits in big \(5 shots\)\n/);
    expect(out).toMatch(/\d+ drops = 0\.\d\d g +Peat, exactly 0\.\d\d g/);
    expect(out).toContain('Hot plastic burns');
  });

  test("takes the recipe's own mold where none is named, and gives JSON", async () => {
    const { out } = await cupbook(['batch', 'bog-pool', '40', '--json', '--recipes', await smallBook()]);
    expect(JSON.parse(out)).toMatchObject({ lines: [{ mold: 'minnow-3', baits: 40, shots: 20 }], baits: 40 });
  });

  test.each([
    [['bog-pol', '10'], 'The book has no recipe "bog-pol". Did you mean bog-pool?'],
    [['bog-pool', 'minow-3=10'], 'The book has no mold "minow-3". Did you mean minnow-3?'],
    [['bog-pool', 'many'], '"many" is not a number of baits: write for example minnow-3=60, or 60 alone.'],
    [['bog-pool', '0'], '"0" is not a number of baits'],
    [['16', 'bog-pool'], 'Name the recipe first: `batch bog-pool 16`.'],
    [['minnow-3=16'], 'Name the recipe first: `batch RECIPE minnow-3=16`.'],
  ])('%j is refused with a sentence', async (line, sentence) => {
    const { code, err } = await cupbook(['batch', ...line, '--recipes', await smallBook()]);
    expect(code).toBe(1);
    expect(err).toContain(sentence);
  });

  test("takes the recipe's own baits where no number is given", async () => {
    const { code, out } = await cupbook(['batch', 'bog-pool', '--json', '--recipes', await smallBook()]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ lines: [{ mold: 'minnow-3', baits: 20 }] });
  });
});

describe('a book with errors', () => {
  const batch = async (files: Readonly<Record<string, string>>, recipe = 'bog-pool'): Promise<Said> =>
    cupbook(['batch', recipe, '10', '--recipes', await smallBook(files)]);
  const needs = (fields: string): string =>
    `---\ntitle: Other\n${fields}cups:\n  body:\n    plastic: 100 ml supple\n---\n`;

  test('answers of what is sound, and says what was left out with what needs it', async () => {
    const { code, out, err } = await batch({
      'colours/broken.md': BROKEN,
      'colours/child.md': '---\ntitle: Child\nfrom: broken\n---\n',
      'photos/unused.jpg': '',
    });
    expect(code).toBe(0);
    expect(out).toMatch(/^Bog Pool: 10 baits in minnow-3/);
    expect(err).toBe(
      'Left out for errors, which npx cupbook check shows: colours/broken.md, and with it what needs it: colours/child.md.\n',
    );
  });

  test.each([
    ['brokn', 'Did you mean broken? (left out: it has errors)'],
    ['chid', 'Did you mean child? (left out: what it needs has errors)'],
  ])('takes %s for the nearest name, though that is left out', async (recipe, hint) => {
    const files = { 'colours/broken.md': BROKEN, 'colours/child.md': '---\ntitle: Child\nfrom: broken\n---\n' };
    const { code, err } = await batch(files, recipe);
    expect([code, err.includes(hint)]).toEqual([1, true]);
  });

  test.each([['broken'], ['child']])(
    'refuses %s, which is faulty or needs what is, after showing why',
    async (recipe) => {
      const files = { 'colours/broken.md': BROKEN, 'colours/child.md': '---\ntitle: Child\nfrom: broken\n---\n' };
      const { code, out, err } = await batch(files, recipe);
      expect([code, out]).toEqual([1, '']);
      expect(err).toContain('recipe/unknown-mold');
      expect(err).toContain(`There are errors in colours/${recipe}.md or in what it needs`);
    },
  );

  test('of which two materials have one name knows neither', async () => {
    const { code, err } = await batch({
      'shelf/powders/peat.md': '---\ntitle: Peat\nlook: { kind: pearl, colour: "#e9e4d4", dose: 1 % }\n---\n',
    });
    expect(code).toBe(1);
    expect(err).toContain('There are errors in colours/bog-pool.md or in what it needs');
  });

  test.each([
    [
      'plastic',
      'shelf/plastics/tough.md',
      '---\ntitle: Tough\nbogus: 1\n---\n',
      needs('mold: minnow-3\n').replace(' supple', ''),
    ],
    ['mold', 'molds/claw.md', '---\ntitle: Claw\n---\n', needs('')],
  ])('does not take the only %s that is sound for the only one', async (_what, path, text, recipe) => {
    const files = { [path]: text, 'colours/other.md': recipe };
    expect(await batch(files, 'other')).toMatchObject({ code: 1, out: '' });
    const { code, out } = await batch(files);
    expect([code, out]).toEqual([0, expect.stringMatching(/^Bog Pool/)]);
    expect(out).not.toContain('Left out');
  });

  test('keeps the films of the other materials where one that was measured is faulty', async () => {
    const films = ['rust', 'sage'].flatMap((id) =>
      [
        'bare_white,86,88,88,88',
        'film_on_white,61.2,66.7,73.0,77.9',
        'bare_black,5,5,5,5',
        'film_on_black,5.9,5.9,6.0,6.1',
      ].map((row) => `${id}-a,${id}=4 drops per 100 ml,1,${row}`),
    );
    const { code, out, err } = await batch(
      {
        'shelf/measurements.csv': [
          '# unit: percent',
          'sample,composition,thickness,surface,400,500,600,700',
          ...films,
          '',
        ].join('\n'),
        'shelf/colorants/rust.md': '---\ntitle: Rust\nlook: { kind: measured }\nbogus: 1\n---\n',
        'shelf/colorants/sage.md': '---\ntitle: Sage\nlook: { kind: measured }\n---\n',
        'colours/other.md': needs('mold: minnow-3\n').replace('supple\n', 'supple\n    add: { sage: 4 drops }\n'),
      },
      'other',
    );
    expect([code, err]).toEqual([0, 'Left out for errors, which npx cupbook check shows: shelf/colorants/rust.md.\n']);
    expect(out).toContain('Sage');
  });

  test('of which only a photo is missing answers of everything', async () => {
    const { code, err } = await batch({ 'colours/other.md': needs('mold: minnow-3\nphotos: [other.jpg]\n') }, 'other');
    expect([code, err]).toEqual([0, '']);
  });

  test('is refused where book.md itself is faulty', async () => {
    const { code, out, err } = await batch({ 'book.md': '---\ntitl: Ours\n---\n' });
    expect([code, out]).toEqual([1, '']);
    expect(err).toContain('nothing can be worked out from it');
  });
});

describe('cupbook explain', () => {
  test.each([
    ['over-poured', 'recipe/over-poured'],
    ['over-pourd', 'recipe/over-poured'],
    ['recipe/over-pourd', 'recipe/over-poured'],
  ])('%s names the whole code', async (code, meant) => {
    const said = await cupbook(['explain', code]);
    expect(said).toMatchObject({ code: 2, err: `There is no message "${code}". Did you mean ${meant}?\n` });
  });
});

test('an error of the program itself is told in two sentences, its place only with --trace', async () => {
  const folder = await smallBook();
  const failOnce = (): unknown =>
    vi.spyOn(JSON, 'stringify').mockImplementationOnce(() => {
      throw new Error('all wrong');
    });
  failOnce();
  const plain = await cupbook(['check', '--json', '--recipes', folder]);
  expect(plain.code).toBe(1);
  expect(plain.err).toMatch(/^Cupbook stopped at an error of its own: all wrong\nPlease report it: .*--trace.*\n$/);
  expect(JSON.parse(plain.out).error).toBe(plain.err.trimEnd());
  failOnce();
  const traced = await cupbook(['check', '--json', '--trace', '--recipes', folder]);
  expect(traced.err).toMatch(/\n {4}at /);
});

test('an error of the system names the file', async () => {
  const folder = await smallBook();
  writeFileSync(join(folder, 'targets'), 'a file where a folder must be');
  const { code, err } = await cupbook(['new', 'reed', '--kind', 'target', '--recipes', folder]);
  expect(code).toBe(1);
  expect(err.trim().split('\n')).toHaveLength(1);
  expect(err).toContain('targets');
  expect(existsSync(join(folder, 'targets/reed.md'))).toBe(false);
});
