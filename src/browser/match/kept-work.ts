import type { MatchPageData } from '../../render/pages/match.ts';
import { type Drafts, readDrafts } from './drafts.ts';
import { isNoWork, type NoWork, readWork } from './read-work.ts';
import { settledWork } from './settle-work.ts';
import type { KeptTexts } from './store.ts';
import type { Work } from './work.ts';

/** A match that the browser kept, with what was typed for it. */
export interface KeptWork {
  readonly work: Work;
  readonly drafts: Drafts;
  /** What had to be changed of it, in sentences; empty where nothing had. */
  readonly says: string;
}

/** The match in what the browser keeps, as this book takes it; undefined where there is none, a sentence where it is none. */
export function keptWork({ work, drafts }: KeptTexts, data: MatchPageData): KeptWork | NoWork | undefined {
  if (work === undefined) return undefined;
  const read = readWork(work);
  if (isNoWork(read)) return read.newer ? read : { fault: 'The match kept here can’t be read.' };
  const settled = settledWork(read, data);
  return 'fault' in settled ? settled : { ...settled, drafts: readDrafts(drafts) };
}
