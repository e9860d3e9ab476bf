/** Search engines and messengers show about so many letters. Common practice, no source. */
const LONGEST = 155;
/** A sentence shorter than this says too little to stand alone. Convention of this book. */
const SHORTEST = 60;

/**
 * The beginning of a text, cut where a sentence ends, else after a word with an ellipsis.
 *
 * @example shortDescription('Took two tries. And then …') // 'Took two tries. And then …'
 */
export function shortDescription(text: string): string {
  if (text.length <= LONGEST) return text;
  const head = text.slice(0, LONGEST);
  const sentences = head.slice(0, Math.max(head.lastIndexOf('. '), head.lastIndexOf('! '), head.lastIndexOf('? ')) + 1);
  if (sentences.length >= SHORTEST) return sentences;
  const room = [...text]
    .slice(0, LONGEST - 1)
    .join('')
    .slice(0, LONGEST - 1);
  const end = room.lastIndexOf(' ');
  return `${(end < 1 ? room : room.slice(0, end)).replace(/[\s,;:–—-]+$/, '')}…`;
}
