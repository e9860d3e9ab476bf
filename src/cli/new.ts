import { existsSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { dayOf } from '../book/day-of.ts';
import type { Book } from '../book/model.ts';
import { plainText } from '../book/read/plain-text.ts';
import { formatDiagnostics } from '../diagnostics/format-diagnostics.ts';
import { nearestName, slips } from '../diagnostics/nearest-name.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import { FILED_KINDS, KINDS, type Kind } from '../kinds/kinds.ts';
import { readFrontMatter } from '../recipe/front-matter.ts';
import { BOOK_FILE, kindOfPath, type Source, slugOf } from '../recipe/source.ts';
import { loadBook } from '../shell/load-book.ts';
import { printable } from '../shell/printable.ts';
import { writeNewFile } from '../shell/write-new-file.ts';
import { defined } from '../values/defined.ts';
import type { Command } from './command.ts';
import { defaultRecipes } from './default-recipes.ts';
import { type Scaffolded, scaffoldText } from './scaffold.ts';

const NEW: readonly Kind[] = [...FILED_KINDS, 'book'];

/** The units of a book whose `book.md` cannot be read. */
const METRIC_UNITS: Scaffolded['settings'] = { volume: 'ml', temperature: '°C' };

/** `cupbook new` */
export const newCommand: Command = {
  name: 'new',
  usage: 'NAME [--kind KIND] [--from RECIPE]',
  summary: 'start a new file of the book, to be filled in',
  words: [1, 1],
  options: {
    kind: { value: 'KIND', help: `${NEW.join(', ')} (default: recipe)` },
    from: { value: 'RECIPE', help: 'make the new recipe from this one' },
  },
  details:
    'What only you know is left empty, with a comment on what to write. Until you fill it in, `cupbook check` warns of it, and the book is built\nwithout. A file that is already there is never touched.',
  async run([name = ''], values, { root, from, recipes }) {
    const kind = kindNamed(values.kind);
    const slug = slugOf(name);
    if (slug === '') throw new Refusal(`"${name}" has no letter or digit that a file name could be made of.`);
    const path = kind === 'book' ? BOOK_FILE : `${KINDS[kind].folder}/${slug}.md`;
    const file = join(recipes, path);
    const shown = relative(from, file);
    if (existsSync(file)) throw new Refusal(`${shown} is already there. ${instead(kind)}`);
    if (kind === 'book') await mkdir(recipes, { recursive: true });

    const loaded = loadBook(recipes);
    const { book } = loaded;
    const ids = idsByKind(loaded.sources);
    const title = /[A-Z\s]/.test(name) ? plainText(name) : titleOf(slug);
    const parent = parentOf(kind, values.from, loaded.sources, book);
    const settings = book?.settings ?? METRIC_UNITS;
    const text = scaffoldText({ kind, title, ids, today: dayOf(new Date()), settings, ...defined({ parent }) });
    checkScaffold(recipes, { path, text });

    await writeNewFile(recipes, path, text);
    console.log(`${shown} is there. Fill it in, then run: ${checkLine(root, from, recipes)}`);
    return 0;
  },
};

function instead(kind: Kind): string {
  return kind === 'book'
    ? 'Its name is always the same: write into that one, or name an empty folder with --recipes for another book.'
    : 'Choose another name.';
}

/** The command that checks this book: with its folder, where that is not the one that is checked without. */
function checkLine(root: string, from: string, recipes: string): string {
  if (recipes === defaultRecipes(root, from)) return 'npx cupbook check';
  const folder = relative(from, recipes) || '.';
  return `npx cupbook check --recipes ${/^[\w./-]+$/.test(folder) ? folder : JSON.stringify(folder)}`;
}

function kindNamed(value: string | boolean | undefined): Kind {
  const kind = value ?? 'recipe';
  const known = NEW.find((candidate) => candidate === kind);
  if (known) return known;
  const near = nearestName(String(kind), NEW);
  // Of names so short a nearer one is often another word.
  const nearest = near !== undefined && slips(String(kind), near) <= 1 ? near : undefined;
  throw new Refusal(
    `There is no kind "${kind}". ${nearest ? `Did you mean ${nearest}?` : `There are: ${NEW.join(', ')}.`}`,
  );
}

function parentOf(
  kind: Kind,
  id: string | boolean | undefined,
  sources: readonly Source[],
  book: Book | undefined,
): Scaffolded['parent'] {
  if (typeof id !== 'string') return undefined;
  if (kind !== 'recipe') throw new Refusal('Only a recipe comes from another recipe: leave out --from or --kind.');
  const source = sources.find(({ path }) => path === `${KINDS.recipe.folder}/${id}.md`);
  if (!source) {
    const nearest = nearestName(id, idsByKind(sources).get('recipe') ?? []);
    throw new Refusal(`The book has no recipe "${id}".${nearest ? ` Did you mean ${nearest}?` : ''}`);
  }
  const recipe = book?.recipes.find((each) => each.id === id);
  return { id, cups: recipe?.cups.map(({ name }) => name) ?? statedCups(source) };
}

/** Compiles the book as if the file were there; what is wrong elsewhere is not the new file's fault. */
function checkScaffold(recipes: string, source: Source): void {
  const { diagnostics } = loadBook(recipes, [source]);
  const own = diagnostics.filter(({ file, severity }) => file === source.path && severity === 'error');
  const faults = source.path === BOOK_FILE ? own.filter(({ code }) => code !== 'book/no-plastic') : own;
  if (faults.length === 0) return;
  const found = printable(formatDiagnostics(faults, new Map([[source.path, source.text]])));
  throw new Refusal(`${source.path} would have errors, so it was not written:\n${found}`);
}

/** The names of the cups that a file itself has, for a recipe that cannot be compiled. */
function statedCups(source: Source): readonly string[] {
  const read = readFrontMatter(source);
  const cups = 'data' in read ? (read.data as { readonly cups?: unknown } | null)?.cups : undefined;
  return typeof cups === 'object' && cups !== null ? Object.keys(cups) : [];
}

function idsByKind(sources: readonly Source[]): ReadonlyMap<Kind, readonly string[]> {
  const ids = new Map<Kind, string[]>();
  for (const { path } of sources) {
    const place = kindOfPath(path);
    if (place) ids.set(place.kind, [...(ids.get(place.kind) ?? []), place.id]);
  }
  return ids;
}

/** "alder-smoke" → "Alder Smoke" */
function titleOf(slug: string): string {
  return slug.replace(
    /(^|-)(\w)/g,
    (_all, hyphen: string, letter: string) => (hyphen ? ' ' : '') + letter.toUpperCase(),
  );
}
