/** What is published of a thing. */
export type Publish = 'full' | 'look' | 'no';

/** For whom a book is: what readers may have of it, or the maker's own copy, with everything in it. */
export type Edition = 'shared' | 'mine';
