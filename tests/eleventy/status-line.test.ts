import { expect, test } from 'vitest';
import { type StatusLine, statusLine } from '../../src/eleventy/status-line.ts';

/** What is written to a terminal, or to a file, while something long runs. */
function written(isTTY: boolean, work: (line: StatusLine) => void): string {
  let text = '';
  const stream = {
    isTTY,
    write: (more: string) => {
      text += more;
      return true;
    },
  };
  work(statusLine(stream as unknown as NodeJS.WriteStream));
  return text;
}

const ERASE = '\r\u001b[K';

test('statusLine() shows one text in the place of another, and leaves nothing', () => {
  const text = written(true, (line) => {
    line.show('computing');
    line.count(1, 600, 'pages');
    line.clear();
    line.clear();
  });
  expect(text).toBe(`${ERASE}computing${ERASE}1 of 600 pages${ERASE}`);
});

test('statusLine() does not count faster than anybody can read', () => {
  const text = written(true, (line) => {
    for (let done = 1; done <= 600; done += 1) line.count(done, 600, 'pages');
  });
  expect(text.split(ERASE).length - 1).toBeLessThan(10);
});

test('statusLine() writes nothing into a file', () => {
  const text = written(false, (line) => {
    line.show('computing');
    line.count(1, 2, 'pages');
    line.clear();
  });
  expect(text).toBe('');
});
