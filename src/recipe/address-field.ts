import { z } from 'zod';
import { asItIs, field, shown } from './fields.ts';

/** Longest address that is read: a QR code holds some 2,000 letters, and browsers as many. Convention of this book. */
const LONGEST_ADDRESS = 500;

const httpUrl = z.httpUrl();

/** Address of the site, `https://book.example/`: of the web, and one that a page's name can stand behind. */
export const address: z.ZodType<string> = field<string>(
  'field/value',
  (input) => {
    const text = typeof input === 'string' ? input.trim() : '';
    const expected = 'an address such as `https://book.example/`';
    if (text.length > LONGEST_ADDRESS) {
      const why = 'it is on every card, and no QR code holds it';
      return { fault: { found: `address of ${text.length} letters`, expected: `at most ${LONGEST_ADDRESS}`, why } };
    }
    if (!httpUrl.safeParse(text).success) return { fault: { found: shown(input), expected } };
    const url = new URL(text);
    const secret = url.username !== '' || url.password !== '';
    if (!secret && !/[?#]/.test(text)) return { value: text };
    [url.username, url.password, url.search, url.hash] = ['', '', '', ''];
    return {
      fault: {
        found: secret ? 'address with a name or password in it' : shown(input),
        expected: 'an address that the names of pages can stand behind',
        why: secret
          ? 'it would stand in every page and on every card'
          : 'nothing can follow what begins with `?` or `#`',
        edits: [{ text: url.href }],
      },
    };
  },
  asItIs,
);
