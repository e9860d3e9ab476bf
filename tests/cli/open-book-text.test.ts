import { expect, test } from 'vitest';
import { openBookText } from '../../src/cli/open-book-text.ts';
import { terminalCode } from '../../src/cli/terminal-code.ts';
import { AS_BEFORE, BLACK_ON_WHITE, codesIn, scanned } from './scanned-code.ts';

test.each(['http://192.168.1.5:8080/', 'http://[fd00::2]:18080/my/book/#key=RIZ_PFx97myqChVEbRANlg'])(
  'terminalCode(%j) is read by a camera, and fits into a terminal of 80 letters',
  (text) => {
    const lines = terminalCode(text).split('\n');
    expect(scanned(lines)).toBe(text);
    for (const line of lines) {
      // Black on white, whatever the terminal's own colours are.
      expect([line.startsWith(BLACK_ON_WHITE), line.endsWith(AS_BEFORE)]).toEqual([true, true]);
      expect(line.slice(BLACK_ON_WHITE.length, -AS_BEFORE.length)).toMatch(/^[ ▀▄█]{1,80}$/);
    }
  },
);

const HERE = { url: 'http://localhost:8080/' };
const PHONE = { ...HERE, phoneUrl: 'http://192.168.1.5:8080/' };
const MINE = { ...PHONE, mineUrl: 'http://192.168.1.5:8080/#key=RIZ_PFx97myqChVEbRANlg' };

test('openBookText says that nobody else can read the book', () => {
  expect(openBookText(HERE, true)).toBe(
    'The book is open at http://localhost:8080/ on this computer alone.\nStop with Ctrl+C.',
  );
});

test('openBookText shows a code for a phone, and says who can read what', () => {
  const text = openBookText({ ...PHONE, otherPhoneUrls: ['http://10.0.0.3:8080/'] }, true);
  expect(codesIn(text)).toEqual([PHONE.phoneUrl]);
  expect(text).toContain('On a phone in the same network: http://192.168.1.5:8080/ (or http://10.0.0.3:8080/)');
  expect(text).toContain(
    'Everybody in this network can read it there while this runs: what you publish, and nothing else.',
  );
  expect(openBookText(PHONE, false)).not.toContain('\u001b');
});

test('openBookText shows the key as a code alone, and says who can listen', () => {
  const text = openBookText(MINE, true);
  expect(codesIn(text)).toEqual([PHONE.phoneUrl, MINE.mineUrl]);
  expect(text).not.toContain('RIZ_PFx97myqChVEbRANlg');
  expect(text).toContain('whoever listens in this network can read along');
  // Where nobody sees it, it may be written down.
  expect(codesIn(openBookText(MINE, false))).toEqual([]);
});
