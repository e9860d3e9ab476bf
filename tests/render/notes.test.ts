import { expect, test } from 'vitest';
import { notesHtml, notesText } from '../../src/render/notes.ts';
import { contextOf, HOSTILE_NOTES, SAMPLE_BOOK } from './sample-book.ts';

const context = await contextOf(SAMPLE_BOOK, 'colours/hostile/');
const note = notesHtml(context, HOSTILE_NOTES).toString();

test('notesHtml(context, notes) writes HTML of a note as text', () => {
  expect(note).toContain('&lt;script&gt;');
  expect(note).not.toMatch(/<(?:script|img|iframe|b)\b/);
});

test('notesHtml(context, notes) links to the web and to pages of the book, nowhere else', () => {
  const hrefs = [...note.matchAll(/href="([^"]*)"/g)].map(([, href]) => href);
  expect(hrefs).toEqual([
    'https://spy.example/pixel.png',
    '../../colours/weir-foam/',
    '../../shelf/peat/',
    'https://web.example/',
  ]);
});

test('notesHtml(context, notes) keeps the words of a link that leads nowhere', () => {
  expect(note).toContain('<span>nowhere</span>');
  expect(note).toContain('<span>elsewhere</span>');
  expect(note).toContain('picture: here');
});

test('notesHtml(context, notes) goes on with headings from the title without a gap', () => {
  const headings = notesHtml(context, '### a\n\n##### b\n\n#### c\n\n# d').toString();
  expect(headings.match(/<h\d/g)).toEqual(['<h2', '<h3', '<h3', '<h2']);
});

test('notesHtml(context, notes) takes no attribute from a fence', () => {
  expect(note).toContain('<pre><code>code &lt;b&gt;');
});

test('notesText(notes) is the words without their markup', () => {
  expect(notesText('A *dark* [Foam](weir-foam.md) `x`\n\n- one\n- two')).toBe('A dark Foam x one two');
});
