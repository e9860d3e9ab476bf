import { sentence } from './sentence-text.ts';

/** What is wrong with a file that is to be a photo: parts of sentences. */
interface FileFault {
  readonly found: string;
  readonly expected?: string;
  readonly why?: string;
  readonly fix?: string;
}

/**
 * Why a file can't be measured, and what to do; sentences.
 *
 * @example photoFileText({ found: 'an empty file', expected: 'a JPEG, PNG or WebP picture', fix: 'copy it again' })
 * // 'This is an empty file; it takes a JPEG, PNG or WebP picture. Copy it again.'
 */
export function photoFileText({ found, expected, why, fix }: FileFault): string {
  const what = `This is ${found}${expected === undefined ? '' : `; it takes ${expected}`}`;
  return [what, why, fix].flatMap((part) => (part === undefined ? [] : [`${sentence(part)}.`])).join(' ');
}
