/**
 * Where the browser keeps a match between visits, in IndexedDB: for each book the match, what was typed for it, and how often they were
 * changed.
 *
 * @packageDocumentation
 */

const DATABASE = 'cupbook-bench';
const STORE = 'work';

// A tab that slept finds as many numbers taken: more than anybody changes before it looks again.
const REVISIONS = 1000;

/** What is kept of a match, as texts. */
export interface KeptTexts {
  readonly work?: string;
  readonly drafts?: string;
}

/** What is kept, and how often it was changed. */
export interface Kept extends KeptTexts {
  readonly revision: number;
}

/** A place for a match, which the tabs of a browser share. */
export interface MatchStore {
  read(): Promise<Kept>;
  /** Keeps texts as a change of that number; false, and nothing is kept, where another tab has made that one. */
  write(texts: KeptTexts, revision: number): Promise<boolean>;
}

/**
 * Opens the store of a book; undefined where the browser keeps nothing, as some do in a private window.
 *
 * @param book what tells this book from others of the same host
 */
export async function openStore(book: string): Promise<MatchStore | undefined> {
  try {
    const database = await opened();
    const keys = { work: book, drafts: `${book}#draft` };
    const numbers = (upTo: number): IDBKeyRange => IDBKeyRange.bound([book, 0], [book, upTo]);
    return {
      read: async () => {
        const store = database.transaction(STORE).objectStore(STORE);
        const [work, drafts, last] = await Promise.all([
          done<unknown>(store.get(keys.work)),
          done<unknown>(store.get(keys.drafts)),
          done(store.openKeyCursor(numbers(Number.MAX_SAFE_INTEGER), 'prev')),
        ]);
        return {
          ...(typeof work === 'string' && { work }),
          ...(typeof drafts === 'string' && { drafts }),
          revision: last ? (last.key as [string, number])[1] : 0,
        };
      },
      write: (texts, revision) => {
        const transaction = database.transaction(STORE, 'readwrite');
        const store = transaction.objectStore(STORE);
        // Refused where the number is taken: then nothing of the transaction is kept.
        store.add(true, [book, revision]);
        if (revision > REVISIONS) store.delete(numbers(revision - REVISIONS));
        if (texts.work !== undefined) store.put(texts.work, keys.work);
        if (texts.drafts !== undefined) store.put(texts.drafts, keys.drafts);
        // Nothing else comes: a page that is left now must not wait for that.
        transaction.commit();
        return kept(transaction);
      },
    };
  } catch {
    return undefined;
  }
}

function opened(): Promise<IDBDatabase> {
  const request = indexedDB.open(DATABASE, 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE);
  return done(request);
}

function done<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** Whether a transaction was kept; false where a key of it was taken. */
function kept(transaction: IDBTransaction): Promise<boolean> {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve(true);
    transaction.onabort = () =>
      transaction.error?.name === 'ConstraintError' ? resolve(false) : reject(transaction.error);
  });
}
