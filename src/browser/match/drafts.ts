/**
 * What was typed on the Match page and is not in a log yet, so that a reload loses nothing of it.
 *
 * @packageDocumentation
 */

import { defined } from '../../values/defined.ts';
import { type HowSeen, keptHow } from './how-seen.ts';
import { keptMeasured, type MeasuredBy } from './measured-by.ts';

/** What was typed for a cup. */
export interface CupDraft {
  /** In the book's unit. */
  readonly pour?: string;
  /** The pour of a round that was taken back, ml: what its field shows may be rounded. */
  readonly pouredMl?: number | undefined;
  /** As typed: no colour yet, perhaps. */
  readonly overWhite?: string;
  readonly overBlack?: string;
  /** How photos measured both; not once one of them was typed anew. */
  readonly measured?: MeasuredBy | undefined;
  readonly sawWhite?: boolean;
  readonly sawBlack?: boolean;
  readonly note?: string;
  /** In the book's unit. */
  readonly heat?: string;
  /** How many times it was heated again. */
  readonly again?: string;
  /** Minutes. */
  readonly held?: string;
  readonly material?: string;
  readonly amount?: string;
  /** In the book's unit. */
  readonly addedMl?: string;
  /** What else went in did so before the last round. */
  readonly beforeRound?: boolean;
  /** What of the recipe is in the cup already, ticked off. */
  readonly mixed?: readonly string[];
}

/** What is not in the match itself. */
export interface Drafts {
  readonly cups: readonly CupDraft[];
  /** Recipes were found for the target, and are shown. */
  readonly found: boolean;
  /** A cup is shown though nothing was put in yet. */
  readonly begun: boolean;
  /** Whether finished baits are looked at, or cups by themselves, as it was last said; absent: it was never asked. */
  readonly whole?: boolean;
  /** Which cup is shown, from 0. */
  readonly shown?: number;
  /** How a test pour was looked at, as it was last said, of whichever match; absent: it was never asked. */
  readonly looked?: HowSeen;
}

const TEXTS = [
  'pour',
  'overWhite',
  'overBlack',
  'note',
  'heat',
  'again',
  'held',
  'material',
  'amount',
  'addedMl',
] as const;
const TICKS = ['sawWhite', 'sawBlack', 'beforeRound'] as const;

/** Drafts as the browser kept them; none, where it kept something else. */
export function readDrafts(text: string | undefined): Drafts {
  try {
    const read: unknown = JSON.parse(text ?? '[]');
    // Earlier a list of cups was kept.
    if (Array.isArray(read)) return { cups: read.map(draftOf), found: false, begun: false };
    const { cups, found, begun, looked, whole, shown } = read as {
      readonly cups: readonly unknown[];
      readonly found: unknown;
      readonly begun?: unknown;
      readonly looked?: unknown;
      readonly whole?: unknown;
      readonly shown?: unknown;
    };
    return {
      cups: cups.map(draftOf),
      found: found === true,
      begun: begun === true,
      ...(typeof whole === 'boolean' ? { whole } : {}),
      ...(shown === 1 ? { shown } : {}),
      ...(looked === undefined ? {} : { looked: keptHow(looked) }),
    };
  } catch {
    return { cups: [], found: false, begun: false };
  }
}

/** A draft without what belongs to a round, once that is in the log; as much is poured the next time, unless it is changed. */
export function withoutRound({ pour, sawWhite, sawBlack, material, amount, addedMl }: CupDraft): CupDraft {
  return { ...ticks({ sawWhite, sawBlack }), ...texts({ pour, material, amount, addedMl }) };
}

function draftOf(value: unknown): CupDraft {
  const fields = (typeof value === 'object' && value !== null ? value : {}) as Readonly<Record<string, unknown>>;
  const { mixed, pouredMl } = fields;
  return {
    ...texts(fields),
    ...ticks(fields),
    ...(typeof pouredMl === 'number' && { pouredMl }),
    ...defined({ measured: keptMeasured(fields.measured) }),
    ...(Array.isArray(mixed) && { mixed: mixed.filter((each) => typeof each === 'string') }),
  };
}

function texts(fields: Readonly<Record<string, unknown>>): CupDraft {
  return Object.fromEntries(TEXTS.flatMap((name) => (typeof fields[name] === 'string' ? [[name, fields[name]]] : [])));
}

function ticks(fields: Readonly<Record<string, unknown>>): CupDraft {
  return Object.fromEntries(TICKS.flatMap((name) => (typeof fields[name] === 'boolean' ? [[name, fields[name]]] : [])));
}
