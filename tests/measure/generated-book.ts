import { seededRandom } from '../../src/cup/random.ts';
import type { Source } from '../../src/recipe/source.ts';
import { readBook } from '../../src/shell/read-book.ts';

const WORDS =
  'alder barge copper dusk eel fen gravel heron iron jetty kiln lantern moss nettle otter pike reed sedge'.split(' ');
const MOLDS = ['bullhead', 'craw-3', 'grub-2', 'minnow-3', 'ribbon-worm-6', 'stick-4'];
const COLORANTS = 'chalk ember kingcup lamp-black mill-blue peat rowan rust sedge sloe straw'.split(' ');
const POWDERS = 'blue-hush brass-pearl frost-pearl ivory-pearl leaf-pearl mallow-pink violet-hush'.split(' ');
const FLAKES = 'black-hex-040 copper-hex-040 gold-hex-015 silver-hex-008 violet-hex-025'.split(' ');

/** Cups of each pattern that is made up, and how often of ten. */
const PATTERNS = [
  { pattern: 'solid', cups: ['body'], often: 4 },
  { pattern: 'laminate', cups: ['back', 'belly'], often: 3 },
  { pattern: 'swirl', cups: ['race', 'foam'], often: 1 },
  { pattern: 'core', cups: ['shell', 'heart'], often: 1 },
  { pattern: 'layered', cups: ['top', 'flank', 'keel'], often: 1 },
] as const;

/** Each so many recipes after the first is derived from one before it. */
const DERIVED_EVERY = 3;

/**
 * A book of invented recipes on the shelf of the demo book: as many as wanted, the same for the same number, some in rounds, a third of
 * them derived from one of the last thirty.
 */
export function generatedBook(recipes: number): readonly Source[] {
  const kept = readBook('recipes')
    .sources.filter(({ path }) => /^(?:book\.md|shelf\/|molds\/)/.test(path))
    // Photos are no texts, and this book has none.
    .map(({ text, ...source }): Source => ({ ...source, text: text.replace(/^photos: .*\n/m, '') }));
  const random = seededRandom(recipes);
  const upTo = (count: number): number => Math.floor(random() * count);
  const oneOf = <T>(list: readonly T[]): T => list[upTo(list.length)]!;
  const doses = (most: number): string => {
    const drops = Array.from({ length: 1 + upTo(most) }, () => [oneOf(COLORANTS), `${1 + upTo(20)} drops`] as const);
    const spoons = random() < 0.5 ? [[oneOf(POWDERS), oneOf(['1/4 tsp', '1/8 tsp', '0.6 g'])] as const] : [];
    const flake = random() < 0.4 ? [[oneOf(FLAKES), oneOf(['1/4 tsp', '1/8 tsp'])] as const] : [];
    const each = new Map([...drops, ...spoons, ...flake]);
    return `{ ${[...each].map(([material, dose]) => `${material}: ${dose}`).join(', ')} }`;
  };
  const colour = (): string => `"#${Array.from({ length: 6 }, () => (3 + upTo(9)).toString(16)).join('')}"`;
  const rounds = (): string =>
    Array.from({ length: 1 + upTo(4) }, (_, index) => {
      const seen = random() < 0.5 ? `\n        seen: { over-white: ${colour()}, note: round ${index + 1} }` : '';
      return `\n      - add: ${doses(2)}\n        pour: ${8 + upTo(12)} ml${seen}`;
    }).join('');
  const written = new Map<number, (typeof PATTERNS)[number]>();
  const many = PATTERNS.flatMap((each) => Array.from({ length: each.often }, () => each));
  const made = Array.from({ length: recipes }, (_, index): Source => {
    const parent = index % DERIVED_EVERY === DERIVED_EVERY - 1 ? Math.max(0, index - 1 - upTo(30)) : undefined;
    const { pattern, cups } = parent === undefined ? oneOf(many) : written.get(parent)!;
    written.set(index, PATTERNS.find((each) => each.pattern === pattern)!);
    const cupText = cups.map((cup) => {
      if (parent !== undefined) return `  ${cup}: { from: ${idOf(parent)}/${cup}, add: ${doses(2)} }`;
      const amounts = random() < 0.3 ? `\n    log:${rounds()}` : `\n    add: ${doses(4)}`;
      return `  ${cup}:\n    plastic: ${100 + 10 * upTo(8)} ml${amounts}`;
    });
    const head = [
      `title: ${titleOf(index)}`,
      `made: 2025-0${1 + (index % 9)}-1${index % 10}`,
      ...(parent === undefined
        ? [`pattern: ${pattern}`, `mold: ${oneOf(MOLDS)}`, `baits: ${12 + upTo(20)}`]
        : [`from: ${idOf(parent)}`]),
      `tags: [${oneOf(['clear water', 'stained water'])}, ${oneOf(['winter', 'summer'])}]`,
    ];
    const notes = `Recipe ${index + 1}, made up to be counted. Pour it slowly.\n\n- It is like the one before.\n- It is not the same.\n`;
    return {
      path: `colours/${idOf(index)}.md`,
      text: `---\n${head.join('\n')}\ncups:\n${cupText.join('\n')}\n---\n${notes}`,
    };
  });
  return [...kept, ...made];
}

/** Name of the recipe of a number, from 0. */
export function idOf(index: number): string {
  return `${WORDS[index % WORDS.length]}-${index}`;
}

function titleOf(index: number): string {
  const [first = '', second = ''] = [WORDS[index % WORDS.length], WORDS[(index * 7 + 3) % WORDS.length]];
  return `${first[0]!.toUpperCase()}${first.slice(1)} ${second} ${index}`;
}
