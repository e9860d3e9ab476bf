import type { Thing } from '../../recipe/read-thing.ts';
import type { Report } from '../report.ts';

// What a word processor makes of straight quotes, in the languages of Europe and Japan.
const OPENING = '“„‟«‹‘‚「『';
const CLOSING = '”“»›’‘」』';
const QUOTED = new RegExp(`^[${OPENING}]\\s*([^${OPENING}${CLOSING}]+?)\\s*[${CLOSING}]$`);

/**
 * Reports titles of one kind of thing that a reader of the book cannot tell apart, though they may differ in capitals, in spaces or in what
 * nobody sees, and those that stand in curly quotes, which YAML takes for letters.
 */
export function checkTitles(things: readonly Thing[], report: Report): void {
  const first = new Map<string, Thing>();
  for (const thing of things) {
    const { title } = thing.fields;
    checkQuotes(thing, title, report);
    const key = `${thing.kind} ${titleKey(title)}`;
    const other = first.get(key);
    if (other === undefined) {
      first.set(key, thing);
      continue;
    }
    report.add('file/same-title', thing, ['title'], {
      found: `second ${thing.kind} with the title \`${title}\``,
      expected: 'a title of its own',
      why: 'on the page, on cards and in search nobody can tell the two apart',
      fix: 'give one of them another title',
      related: [
        {
          message: `the first is \`${other.fields.title}\``,
          file: other.source.path,
          start: other.place(['title'], 'value').start,
        },
      ],
    });
  }
}

/** What is alike of titles that look the same. */
function titleKey(title: string): string {
  return title
    .normalize('NFKC')
    .replace(/\p{Default_Ignorable_Code_Point}/gu, '')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();
}

function checkQuotes(thing: Thing, title: string, report: Report): void {
  const [, inside] = QUOTED.exec(title) ?? [];
  const { start, end } = thing.place(['title'], 'value');
  // Who puts them into straight quotes of YAML means them.
  const isQuoted = end !== undefined && end.line === start.line && end.column - start.column > title.length;
  if (inside === undefined || isQuoted) return;
  report.add('file/quoted-title', thing, ['title'], {
    found: `\`${title}\` in curly quotes`,
    expected: 'a title without quotes, or in straight ones',
    why: 'YAML takes curly quotes for letters of the title',
    fix: `write \`${inside}\`, or \`"${title}"\` if they belong to it`,
  });
}
