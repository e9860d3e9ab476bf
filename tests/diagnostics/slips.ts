/**
 * Slips of a maker's pen in a book without mistakes: each the book with one thing wrong, and its name.
 *
 * @packageDocumentation
 */
/** Texts of a book, by path. */
export type Files = Readonly<Record<string, string>>;

/** A book with one slip in it. */
export interface Slip {
  readonly name: string;
  readonly files: Files;
}

const file = (...front: string[]): string => `---\n${front.join('\n')}\n---\nFor stained water.\n`;

/** A book without mistakes, with every kind of file and most fields. */
export const SOUND_BOOK: Files = {
  'book.md': file(
    'title: Two Cups',
    'units: { volume: ml, temperature: °C }',
    'tolerance: 2.5',
    'loss: 8%',
    'plastic: supple',
  ),
  'colours/canal.md': file(
    'title: Canal',
    'made: 2026-03-14',
    'pattern: laminate',
    'mold: minnow-3',
    'baits: 24',
    'cups:',
    '  back:',
    '    share: 40%',
    '    plastic: 60 ml supple',
    '    add:',
    '      peat: 12 drops',
    '      copper-hex-040: 1/8 tsp',
    '  belly:',
    '    plastic: 90 ml supple',
    '    log:',
    '      - add: { peat: 3 drops, frost-pearl: 1.5 % }',
    '        heat: 171 °C',
    '        note: stirred',
    '      - pour: 14 ml',
  ),
  'colours/dusk-canal.md': file(
    'title: Dusk Canal',
    'from: canal',
    'for: roach',
    'tags: [dusk, stained]',
    'cups:',
    '  back:',
    '    add: { peat: 8 drops per 100 ml }',
  ),
  'colours/tail.md': file(
    'title: Tail',
    'mold: minnow-3',
    'cups:',
    '  body:',
    '    from: canal/back',
    '    without: peat',
  ),
  'molds/minnow-3.md': file('title: Minnow', 'cavities: 4', 'cavity: 3.1 ml', 'body: 9 mm', 'thin: 2 mm'),
  'shelf/additives/anise-oil.md': file('title: Anise oil', 'drop: 0.05 ml', 'most: 12 drops per 100 ml'),
  'shelf/colorants/peat.md': file(
    'title: Peat',
    'look: { kind: pigment, colour: "#5b4327", dose: 12 drops per 100 ml }',
    'drop: { count: 20, mass: 0.98 g }',
    'density: 1.1 g/ml',
    'price: 6.40',
    'pack: 30 ml',
  ),
  'shelf/flakes/copper-hex-040.md': file(
    'title: Copper',
    'look: { colour: "#b46a3c" }',
    'shape: hexagon',
    'size: 0.040 in',
  ),
  'shelf/plastics/supple.md': file('title: Supple', 'working: { from: 165 °C, to: 177 °C }', 'highest: 185 °C'),
  'shelf/powders/frost-pearl.md': file(
    'title: Frost',
    'look: { kind: pearl, colour: "#e8e4da", dose: 1 % }',
    'bulk: 0.38 g/ml',
  ),
  'targets/roach.md': file(
    'title: Roach',
    'parts:',
    '  back: { over-white: "#7a6a4c", thickness: 4 mm }',
    '  belly: { over-white: "#d9c48f" }',
  ),
};

/** What may go wrong with the name of a field. */
const KEY_SLIPS: Readonly<Record<string, (key: string) => string>> = {
  'letter left out': (key) => key.slice(0, 1) + key.slice(2),
  'letters exchanged': (key) => key.slice(0, 1) + key.slice(2, 3) + key.slice(1, 2) + key.slice(3),
  'letter twice': (key) => key + key.slice(-1),
  'with a capital': (key) => key.slice(0, 1).toUpperCase() + key.slice(1),
  'first letter wrong': (key) => `x${key.slice(1)}`,
  'another name': () => 'most',
  'a name of elsewhere': () => 'from',
};

/** What may go wrong with a value. */
const VALUE_SLIPS: Readonly<Record<string, (value: string) => string>> = {
  'letter left out': (value) => value.slice(0, 1) + value.slice(2),
  'letter twice': (value) => value.replace(/(\w)(\W|$)/, '$1$1$2'),
  'a comma for a point': (value) => value.replace('.', ','),
  'one and a half': () => '1,5',
  'a volume': () => '30 ml',
  'a colour': () => '"#000000"',
  'a bare colour': (value) => value.replaceAll('"', ''),
  'a word': () => 'green',
  'with capitals and spaces': (value) => value.replace(/-/g, ' ').replace(/\b[a-z]/g, (letter) => letter.toUpperCase()),
  'a sign after it': (value) => `${value}9…dark`,
  'without its unit': (value) => value.replace(/(\d) ?[a-z°%]+$/i, '$1'),
  'with a misspelt unit': (value) => value.replace(/(\d ?[a-z°]*?)([a-z])$/i, '$1$2$2'),
  'with a path': (value) => `colours/${value}.md`,
  'with a text after it': (value) => `${value} or so`,
  'with a colon': (value) => `${value}: dark`,
  'a number for it': () => '#1 Perch',
  nothing: () => '',
};

/** What may go wrong with a line. */
const LINE_SLIPS: Readonly<Record<string, (line: string) => string>> = {
  'no space after the colon': (line) => line.replace(/: (?=\S)/, ':'),
  'no colon': (line) => line.replace(':', ''),
  'no-break spaces before it': (line) => line.replace(/^ +/, (spaces) => '\u00a0'.repeat(spaces.length)),
  'a space too many': (line) => ` ${line}`,
  'a space too few': (line) => line.replace(/^ /, ''),
  'a tab': (line) => line.replace(/^ {2}/, '\t'),
  'an equals sign': (line) => line.replace(':', ' ='),
  'a dash before it': (line) => line.replace(/^( *)(?=\w)/, '$1- '),
  twice: (line) => `${line}\n${line}`,
  'a note above it': (line) => `Good in stained water\n${line}`,
  'a sentence above it': (line) => `Colours: for the slow end of the canal.\n${line}`,
};

const LINE = /^(\s*(?:- )?)([\w-]+):(?: +([^#\n]*?))?( *#.*)?$/;

/** Every slip of every line of the front matter. */
function slipsOfLine(line: string): readonly (readonly [string, string])[] {
  const [, before = '', key, value = '', after = ''] = LINE.exec(line) ?? [];
  if (key === undefined) return [];
  const colon = value === '' ? ':' : ': ';
  return [
    ...Object.entries(KEY_SLIPS).map(
      ([name, slip]) => [`name: ${name}`, `${before}${slip(key)}${colon}${value}${after}`] as const,
    ),
    ...(value === '' || /^[[{]/.test(value)
      ? []
      : Object.entries(VALUE_SLIPS).map(
          ([name, slip]) => [`value: ${name}`, `${before}${key}: ${slip(value)}${after}`] as const,
        )),
    ...Object.entries(LINE_SLIPS).map(([name, slip]) => [`line: ${name}`, slip(line)] as const),
    ...slipsWithin(line),
  ].filter(([, text]) => text !== line);
}

/** A value with a half more, written with a comma. */
function halved(value: string): string {
  return value.replace(/(\d+)(?:\.\d+)?(?= ?[a-z°%])/, '$1,5');
}

/** Slips within a list of fields in braces. */
function slipsWithin(line: string): readonly (readonly [string, string])[] {
  return [...line.matchAll(/([\w-]+): ("[^"]*"|[^,{}[\]]+?)(?=[ ]?[,}])/g)].flatMap(
    ({ index, 0: all, 1: key = '', 2: value = '' }) => {
      const put = (text: string): string => line.slice(0, index) + text + line.slice(index + all.length);
      return [
        ...Object.entries(KEY_SLIPS).map(
          ([name, slip]) => [`name in braces: ${name}`, put(`${slip(key)}: ${value}`)] as const,
        ),
        // In braces a comma begins another field, so that this one lacks its unit as well: two slips.
        ...Object.entries({ ...VALUE_SLIPS, 'one and a half': halved }).map(
          ([name, slip]) => [`value in braces: ${name}`, put(`${key}: ${slip(value)}`)] as const,
        ),
        ['in braces: a comma in it', put(`${key}: better, ${value}`)] as const,
        ['in braces: no colon', put(`${key} ${value}`)] as const,
      ];
    },
  );
}

/** Slips with whole files: where they lie, and under what name. */
function slipsOfFiles(): readonly Slip[] {
  const moved = (from: string, to: string): Slip => {
    const { [from]: text, ...others } = SOUND_BOOK;
    return { name: `${from} as ${to}`, files: { ...others, [to]: text! } };
  };
  return Object.keys(SOUND_BOOK).flatMap((path) => {
    const name = path.slice(path.lastIndexOf('/') + 1);
    return path === 'book.md'
      ? []
      : [
          moved(path, name),
          moved(path, `recipes/${name}`),
          moved(path, path.replace('.md', '.md.txt')),
          moved(path, path.replace('.md', '.txt')),
          moved(
            path,
            path.replace(/[^/]+$/, (each) => each.toUpperCase().replaceAll('-', ' ')),
          ),
          moved(path, `${path.startsWith('colours/') ? 'shelf/colorants' : 'colours'}/${name}`),
          moved(path, path.replace('.md', '-renamed.md')),
        ];
  });
}

/** All slips, each in one line or with one file; where several make the same book, the first of them. */
export function allSlips(): readonly Slip[] {
  const ofLines = Object.entries(SOUND_BOOK).flatMap(([path, text]) => {
    const lines = text.split('\n');
    const end = lines.indexOf('---', 1);
    return lines.slice(1, end).flatMap((line, index) =>
      slipsOfLine(line).map(([name, wrong]): Slip => {
        const changed = lines.with(index + 1, wrong).join('\n');
        return { name: `${path}:${index + 2} ${name}`, files: { ...SOUND_BOOK, [path]: changed } };
      }),
    );
  });
  const seen = new Set<string>();
  return [...ofLines, ...slipsOfFiles()].filter(({ files }) => {
    const key = JSON.stringify(files);
    return !seen.has(key) && seen.add(key);
  });
}
