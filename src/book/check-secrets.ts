import { CATALOGUE } from '../diagnostics/catalogue.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Thing } from '../recipe/read-thing.ts';
import { FOLDERS } from '../recipe/source.ts';
import type { Book } from './model.ts';
import { type Mention, mentions, nameWords, normalized } from './name-in-text.ts';
import { publishedBook } from './published-book.ts';

interface Named {
  readonly id: string;
  readonly title: string;
}

/** Reports what published texts tell of recipes and targets that are not published, by their ids or by their titles. */
export function checkPublished(book: Book, things: readonly Thing[], diagnostics: Diagnostic[]): void {
  const secrets = [
    ...book.recipes.map((recipe) => ({ ...recipe, folder: FOLDERS.recipe })),
    ...book.targets.map((target) => ({ ...target, folder: FOLDERS.target })),
  ].filter(({ publish }) => publish === 'no');
  if (secrets.length === 0) return;
  const published = publishedBook(book);
  const files = [...published.recipes, ...published.materials, ...published.molds, ...published.targets];
  const named: readonly Named[] = [...files, ...published.looks];
  const bySource = new Map(files.map((file) => [file.source.path, file]));
  const looks = new Map(published.looks.map((look) => [look.id, look]));
  const names = secrets.flatMap((secret) => namesOf(secret).map((name) => ({ secret, name })));
  for (const thing of things) {
    const file = bySource.get(thing.source.path);
    const own = file ?? (thing.kind === 'recipe' ? looks.get(thing.id) : undefined);
    const texts = file
      ? [file.source.text, ...writtenIn(file)]
      : thing.kind === 'book'
        ? [book.title, book.maker ?? '', book.address ?? '', book.settings.currency, book.foreword]
        : [own?.title ?? ''];
    // With a sign between them that stands in no name.
    const text = normalized(texts.join('\n|\n'));
    const small = text.toLowerCase();
    const worst = new Map<Named, Mention>();
    for (const { secret, name } of names) {
      if (!small.includes(nameWords(name)[0]!)) continue;
      for (const mention of tellingMentions(text, name, secret.folder, named, own)) {
        if (!worst.has(secret) || (mention.sure && !worst.get(secret)!.sure)) worst.set(secret, mention);
      }
    }
    for (const [secret, mention] of worst) diagnostics.push(finding(secret, thing, mention));
  }
}

/** Title and id, as words in lower case; once where they are the same. */
function namesOf({ title, id }: Named): readonly string[] {
  return [...new Set([title, id].map((name) => nameWords(name).join(' ')))].filter((name) => name !== '');
}

/** Fields of a published thing that hold what its maker wrote. */
const WRITTEN: ReadonlySet<string> = new Set(['title', 'notes', 'note', 'caption', 'tags', 'thinPart']);

/** What a maker wrote in a published thing: a file that stands by itself leaves some of it out. */
function writtenIn(value: unknown, written = false): readonly string[] {
  if (typeof value === 'string') return written ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((each) => writtenIn(each, written));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inside]) => writtenIn(inside, WRITTEN.has(key)));
}

/**
 * The mentions that tell of a secret. A published thing of the same name is meant rather than the secret; and a single word within the
 * name of a published thing (`Smoke` in Alder Smoke) is that name, in its own file perhaps not.
 */
function tellingMentions(
  text: string,
  name: string,
  folder: string,
  published: readonly Named[],
  own: Named | undefined,
): readonly Mention[] {
  const all = mentions(text, name);
  if (all.length === 0) return [];
  const single = !name.includes(' ');
  const holding = published.flatMap((thing) =>
    namesOf(thing).flatMap((other) =>
      other === name || (single && other.split(' ').includes(name)) ? [{ thing, other }] : [],
    ),
  );
  return all.flatMap((mention) => {
    const around = holding.filter(({ other }) => covers(text, other, mention));
    if (around.length === 0 || text.slice(0, mention.start).endsWith(`${folder}/`)) return [mention];
    const ownAlone = around.every(({ thing, other }) => thing === own && other !== name);
    return ownAlone ? [{ ...mention, sure: false }] : [];
  });
}

function covers(text: string, name: string, { start, end }: Mention): boolean {
  return mentions(text, name).some((mention) => mention.start <= start && mention.end >= end);
}

function finding(secret: Named, { source }: Thing, { text, sure }: Mention): Diagnostic {
  const code = sure ? 'publish/named' : 'publish/word';
  const said = sure
    ? {
        found: `mention of \`${secret.id}\`, which is not published`,
        expected: 'no word of it in a published file',
        why: 'what is not published leaves no trace in the book',
        fix: 'remove the mention, or publish the other as `look`',
      }
    : {
        found: `\`${text}\`, which is also the name of \`${secret.id}\`, and that is not published`,
        expected: 'no word of it in a published file',
        why: 'this may be the everyday word, or it may tell of that',
        fix: 'remove it if it tells of that; else leave it, or give that a name of two words',
      };
  return {
    code,
    severity: CATALOGUE[code].severity,
    file: source.path,
    start: placeOf(source.text, secret, text),
    ...said,
  };
}

/** Where a mention stands in a file as it was written: not where the file says what it comes from, which is not published. */
function placeOf(source: string, secret: Named, found: string): Diagnostic['start'] {
  const text = normalized(source);
  const all = namesOf(secret)
    .flatMap((name) => mentions(text, name))
    .sort((one, other) => one.start - other.start);
  const at = all.find(
    (mention) => mention.text === found && !/\b(?:from|for):\s*["']?$/.test(text.slice(0, mention.start)),
  );
  const lines = text.slice(0, at?.start ?? 0).split('\n');
  return { line: lines.length, column: lines.at(-1)!.length + 1 };
}
