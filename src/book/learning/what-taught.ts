import { required } from '../../values/required.ts';
import type { Material } from '../model/shelf.ts';
import type { Book } from '../model.ts';
import { clearPlastic, plainCup, typicalCup } from '../shelf/shown-alone.ts';
import { ofCup } from './cup-keys.ts';
import { eyeOf } from './eye-of.ts';

/** A recipe, or a chip, whose looks have taught something. */
export interface Teacher {
  readonly kind: 'recipe' | 'chip';
  readonly id: string;
  /** Looks at something with the material in it. */
  readonly looks: number;
  /** Of all the doubt that its file leaves, so much is gone by these looks: at most 1, and at times a little below 0. */
  readonly share: number;
}

/** What a book knows a material from. */
export interface WhatTaught {
  /** How many looks there were at something with it. */
  readonly looks: number;
  /** The share of these looks together. */
  readonly share: number;
  /** Those that told most first. */
  readonly teachers: readonly Teacher[];
}

/**
 * What has taught a book the colour of a material: of a typical dose in clear plastic, or of a plastic as it is. Of the looks that the
 * edition has. Undefined where there are none, and of what has no such colour.
 */
export function whatTaught(
  { learned, materials }: Pick<Book, 'learned' | 'materials'>,
  { id, typical, kind, constants, flake }: Material,
): WhatTaught | undefined {
  const plastic = kind === 'plastic' ? id : clearPlastic(materials);
  if (!constants || flake || plastic === undefined || (kind !== 'plastic' && typical === undefined)) return undefined;
  const eye = eyeOf(learned);
  const keys = eye.looksWith(id);
  if (keys.size === 0) return undefined;
  const looksAt = new Map<string, number>();
  for (const { key, cup } of learned.data.looks) if (keys.has(key)) looksAt.set(cup, (looksAt.get(cup) ?? 0) + 1);
  const asked = kind === 'plastic' ? plainCup(id) : typicalCup(id, typical!, plastic);
  const teachers = new Map<string, Teacher>();
  for (const { cup, share } of eye.belief.taughtBy(asked, (each) => looksAt.has(each))) {
    const of = ofCup(cup);
    const name = `${of.kind} ${of.id}`;
    const before = teachers.get(name);
    const looks = required(looksAt, cup);
    teachers.set(name, { ...of, looks: (before?.looks ?? 0) + looks, share: (before?.share ?? 0) + share });
  }
  const sorted = [...teachers.values()].sort((one, other) => other.share - one.share);
  return { looks: keys.size, share: sorted.reduce((sum, { share }) => sum + share, 0), teachers: sorted };
}
