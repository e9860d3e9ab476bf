import { setTimeout as pause } from 'node:timers/promises';
import { DISK, type Effects } from './effects.ts';
import { asWriter, type Writer, writerState } from './writer.ts';

/** What the writing of a site depends on. */
export interface World {
  readonly disk: Effects;
  readonly writer: Writer;
  /** Whether another writer is at work. */
  stateOf(writer: Writer): Promise<'gone' | 'working' | 'elsewhere'>;
  /** Resolves after some ms. */
  pause(ms: number): Promise<unknown>;
}

/** Has a new writer do something on this machine. */
export function onThisMachine<T>(act: (world: World) => Promise<T>): Promise<T> {
  return asWriter((writer) => act({ disk: DISK, writer, stateOf: writerState, pause }));
}
