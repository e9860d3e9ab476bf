import type { Diagnostic } from '../../diagnostics/diagnostic.ts';
import { KINDS } from '../../kinds/kinds.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import type { Book } from '../model.ts';
import type { Report } from '../report.ts';
import { type Mention, mentions, type NameIndex, nameIndex, nameWords } from './name-in-text.ts';
import { publishedBook } from './published-book.ts';

interface Named {
  readonly id: string;
  readonly title: string;
}

/** A recipe or target that is not published. */
export interface Secret extends Named {
  readonly folder: string;
}

/** What is published, by names. */
interface Published {
  readonly names: readonly { readonly of: Named; readonly name: string }[];
  readonly secrets: NameIndex<Secret>;
}

/**
 * Reports what published texts, and the names of published files, tell of recipes and targets that are not published.
 *
 * @param hidden those of them that are left out of the book
 */
export function checkPublished(book: Book, things: readonly Thing[], hidden: readonly Secret[], report: Report): void {
  const secrets: readonly Secret[] = [
    ...[
      ...book.recipes.map((recipe) => ({ ...recipe, folder: KINDS.recipe.folder })),
      ...book.targets.map((target) => ({ ...target, folder: KINDS.target.folder })),
    ].filter(({ publish }) => publish === 'no'),
    ...hidden,
  ];
  if (secrets.length === 0) return;
  const shared = publishedBook(book);
  const cuts = shared.materials.flatMap((material) => material.cuts ?? []);
  const files = [...shared.recipes, ...shared.chips, ...shared.materials, ...cuts, ...shared.molds, ...shared.targets];
  const published: Published = {
    names: [...files, ...shared.looks].flatMap((of) => namesOf(of).map((name) => ({ of, name }))),
    secrets: nameIndex(secrets.flatMap((of) => namesOf(of).map((name) => ({ of, name })))),
  };
  const bySource = new Map(files.map((file) => [file.source.path, file]));
  const looks = new Map(shared.looks.map((look) => [look.id, look]));
  for (const thing of things) {
    const file = bySource.get(thing.source.path);
    const own = file ?? (thing.kind === 'recipe' ? looks.get(thing.id) : undefined);
    const texts = file
      ? [file.source.text, ...writtenIn(file)]
      : thing.kind === 'book'
        ? [book.title, book.maker ?? '', book.address ?? '', book.settings.currency, book.foreword]
        : [own?.title ?? ''];
    // With a line between them that stands in no name.
    const told = worst(tellingMentions(texts.join('\n\n=\n\n'), published, own));
    for (const mention of told) reportMention(mention, thing, published.secrets, report);
    if (own === undefined) continue;
    // A word that may be an everyday one is told of once, in the title.
    const inTitle = new Set(tellingMentions(own.title, published, own).flatMap(({ of, sure }) => (sure ? [] : [of])));
    for (const { of } of worst(tellingMentions(own.id.replaceAll('-', ' '), published, own)))
      if (!inTitle.has(of)) reportName(of, thing, report);
  }
}

/** Of each secret the mention that tells most. */
function worst(found: readonly Mention<Secret>[]): readonly Mention<Secret>[] {
  const kept = new Map<Secret, Mention<Secret>>();
  for (const mention of found) {
    const before = kept.get(mention.of);
    if (before === undefined || (mention.sure && !before.sure)) kept.set(mention.of, mention);
  }
  return [...kept.values()];
}

/** Title and id; once where they are the same words. */
function namesOf({ title, id }: Named): readonly string[] {
  return nameWords(title).join(' ') === nameWords(id).join(' ') ? [title] : [title, id];
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
  { names, secrets }: Published,
  own: Named | undefined,
): readonly Mention<Secret>[] {
  return mentions(text, secrets).flatMap((mention) => {
    const words = new Set(namesOf(mention.of).map((name) => nameWords(name).join(' ')));
    const holding = names.filter(({ name }) => {
      const other = nameWords(name);
      return words.has(other.join(' ')) || other.some((word) => words.has(word));
    });
    const around = mentions(text, nameIndex(holding.map(({ of, name }) => ({ of: { of, name }, name })))).filter(
      ({ start, end }) => start <= mention.start && end >= mention.end,
    );
    if (around.length === 0 || text.slice(0, mention.start).endsWith(`${mention.of.folder}/`)) return [mention];
    const ownAlone = around.every(({ of: { of, name } }) => of === own && !words.has(nameWords(name).join(' ')));
    return ownAlone ? [{ ...mention, sure: false }] : [];
  });
}

function reportMention(
  { of: secret, text, sure }: Mention<Secret>,
  { source }: Thing,
  secrets: NameIndex<Secret>,
  report: Report,
): void {
  const code = sure ? 'publish/named' : 'publish/word';
  const said = sure
    ? {
        found: `mention of \`${secret.id}\`, which is not published`,
        expected: 'no word of it in a published file',
        why: 'what is not published leaves no trace in the book',
        fix: 'remove the mention, or publish the other as `look`',
      }
    : {
        found: `\`${text}\`, which may be the name of \`${secret.id}\`, and that is not published`,
        expected: 'no word of it in a published file',
        why: 'this may mean something else, or it may tell of that',
        fix: 'remove it if it tells of that; else leave it, or give that another name',
      };
  report.tell(code, source.path, { start: placeOf(source.text, secret, text, secrets), ...said });
}

/** A file whose name tells of a secret: it stands in addresses, in the search and in the data. */
function reportName(secret: Secret, { source }: Thing, report: Report): void {
  const name = source.path.slice(source.path.lastIndexOf('/') + 1);
  report.tell('publish/named', source.path, {
    found: `file name \`${name}\`, which tells of \`${secret.id}\`, and that is not published`,
    expected: 'a name of its own',
    why: 'the file is published, and its name is in addresses',
    fix: 'give the file another name, or publish the other as `look`',
  });
}

/** Where a mention stands in a file as it was written: not where the file says what it comes from, which is not published. */
function placeOf(source: string, secret: Secret, found: string, secrets: NameIndex<Secret>): Diagnostic['start'] {
  const at = mentions(source, secrets).find(
    ({ of, text, start }) =>
      of === secret && text === found && !/\b(?:from|for):\s*["']?$/.test(source.slice(0, start)),
  );
  const lines = source.slice(0, at?.start ?? 0).split('\n');
  return { line: lines.length, column: lines.at(-1)!.length + 1 };
}
