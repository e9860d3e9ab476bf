import { expect, test } from 'vitest';
import { notesHtml, notesText } from '../../src/render/notes.ts';
import { allByRole, byRole, documentOf, nameOf, wordsIn } from '../page-dom.ts';
import { contextOf, HOSTILE_NOTES, SAMPLE_BOOK } from './sample-book.ts';

const context = await contextOf(SAMPLE_BOOK, 'colours/hostile/');
const note = documentOf(notesHtml(context, HOSTILE_NOTES));

test('notesHtml(context, notes) writes HTML of a note as text', () => {
  expect(wordsIn(note)).toContain('<script>alert(3)</script>');
  expect(note.querySelector('script, img, iframe, b')).toBeNull();
});

test('notesHtml(context, notes) links to the web and to pages of the book, nowhere else', () => {
  const hrefs = [...note.querySelectorAll('[href]')].map((link) => link.getAttribute('href'));
  expect(hrefs).toEqual([
    'https://spy.example/pixel.png',
    '../../colours/weir-foam/',
    '../../shelf/peat/',
    'https://web.example/',
  ]);
});

test('notesHtml(context, notes) keeps the words of a link that leads nowhere', () => {
  expect(allByRole(note, 'link').map(nameOf)).not.toContain('nowhere');
  for (const word of ['nowhere', 'elsewhere', 'picture: here']) expect(wordsIn(note)).toContain(word);
});

test('notesHtml(context, notes) goes on with headings from the title without a gap', () => {
  const headings = allByRole(documentOf(notesHtml(context, '### a\n\n##### b\n\n#### c\n\n# d')), 'heading');
  expect(headings.map(({ nodeName }) => nodeName)).toEqual(['H2', 'H3', 'H3', 'H2']);
});

test('notesHtml(context, notes) takes no attribute from a fence', () => {
  const code = byRole(note, 'code');
  expect([wordsIn(code), code.getAttributeNames(), code.parentElement!.getAttributeNames()]).toEqual([
    'code <b>',
    [],
    [],
  ]);
});

test('notesText(notes) is the words without their markup', () => {
  expect(notesText('A *dark* [Foam](weir-foam.md) `x`\n\n- one\n- two')).toBe('A dark Foam x one two');
});
