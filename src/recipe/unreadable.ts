/**
 * What keeps a text from being read at all, found before any parser sees it.
 *
 * @packageDocumentation
 */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { shown } from './fields.ts';
import { LONGEST_TEXT } from './source.ts';
import type { TextPlaces } from './text-places.ts';
import { DEEPEST, isNestedTooDeep } from './yaml-bounds.ts';

/** First line of a file: front matter in YAML begins. */
export const OPENING: RegExp = /^---[ \t]*(?:\r?\n|$)/;
/** Line on which the front matter ends. */
export const CLOSING: RegExp = /\n---[ \t]*(?:\r?\n|$)/;

/** Length of the byte order mark that a text begins with. */
export function markLength(text: string): 0 | 1 {
  return text.startsWith('\uFEFF') ? 1 : 0;
}

/** Why a text is no file with front matter in YAML; undefined where it can be split and parsed. */
export function unreadable(text: string, places: TextPlaces): Diagnostic | undefined {
  const mark = markLength(text);
  const content = text.slice(mark);
  return noText(text, places) ?? noFrontMatter(content, mark, places) ?? unclearEnd(content, mark, places);
}

function noText(text: string, { fault }: TextPlaces): Diagnostic | undefined {
  if (text.length > LONGEST_TEXT) {
    return fault('file/too-large', 0, {
      found: `text of ${Math.round(text.length / 1024)} KiB`,
      expected: `at most ${LONGEST_TEXT / 1024} KiB`,
      why: 'a recipe is a page, and longer front matter takes minutes to read',
    });
  }
  const nul = text.indexOf('\0');
  if (nul === -1) return undefined;
  return fault('file/not-text', nul, {
    found: 'NUL character',
    expected: 'text',
    why: 'the file is damaged or is no text file',
  });
}

function noFrontMatter(content: string, mark: number, { fault }: TextPlaces): Diagnostic | undefined {
  if (!OPENING.test(content)) {
    const language = /^---+[ \t]*(\S+)/.exec(content)?.[1];
    return language === undefined
      ? fault('front-matter/missing', 0, {
          found: 'text without front matter',
          expected: 'a first line `---`',
          why: 'the data goes between two lines `---`',
          fix: 'write `---` as the first line, then the fields, then `---`',
        })
      : fault('front-matter/language', mark, {
          found: `\`---${language}\``,
          expected: 'a first line that is `---` alone',
          why: 'front matter is YAML here, never a program',
          fix: 'write `---`',
        });
  }
  if (CLOSING.test(content)) return undefined;
  return fault('front-matter/missing', 0, {
    found: 'front matter without an end',
    expected: 'a line `---` after the fields',
    fix: 'write `---` on a line of its own above the notes',
  });
}

function unclearEnd(content: string, mark: number, { fault }: TextPlaces): Diagnostic | undefined {
  // The splitter ends the front matter there, and what follows would go among the notes: `publish: no` perhaps.
  const rule = content.indexOf('\n---', 3);
  const end = content.search(CLOSING);
  if (rule < end) {
    const line = content.slice(rule + 1).split(/\r?\n/, 1)[0]!;
    return fault('front-matter/syntax', mark + rule + 1, {
      found: shown(line),
      expected: 'a line `---` alone, where the fields end',
      why: 'it is not clear which lines are fields and which are notes',
      fix: 'write `---` if the fields end there, else remove it',
    });
  }
  if (!isNestedTooDeep(content.slice(0, end))) return undefined;
  return fault('file/too-large', 0, {
    found: `fields nested more than ${DEEPEST} deep`,
    expected: 'fields as the manual describes them',
    why: 'no file of a book nests so deep, and reading it takes minutes',
  });
}
