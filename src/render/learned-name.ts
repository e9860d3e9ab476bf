/** What the file of a book's learned shelf leaves it under, in the window of the page that loads it. */
export const LEARNED_AS = 'cupbookLearned';
