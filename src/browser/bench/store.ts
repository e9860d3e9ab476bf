/**
 * Where the browser keeps a match between visits: one text for each book, in IndexedDB.
 *
 * @packageDocumentation
 */

const DATABASE = 'cupbook-bench';
const STORE = 'work';

/** A place for one text. */
export interface WorkStore {
  read(): Promise<string | undefined>;
  write(text: string): Promise<void>;
}

/**
 * Opens the store of a book; undefined where the browser keeps nothing, as some do in a private window.
 *
 * @param book what tells this book from others of the same host
 */
export async function openStore(book: string): Promise<WorkStore | undefined> {
  try {
    const database = await opened();
    return {
      read: async () => {
        const text: unknown = await done(database.transaction(STORE).objectStore(STORE).get(book));
        return typeof text === 'string' ? text : undefined;
      },
      write: async (text) => {
        const transaction = database.transaction(STORE, 'readwrite');
        const put = done(transaction.objectStore(STORE).put(text, book));
        // Nothing else comes: a page that is left now must not wait for that.
        transaction.commit();
        await put;
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
