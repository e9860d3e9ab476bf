import { defined } from '../values/defined.ts';
import type { HowLooked } from './how-looked.ts';

/** What was seen of a cup, whatever a colour is here; neither view where only something else was noted. */
export interface AnyLook extends HowLooked {
  readonly overWhite?: unknown;
  readonly overBlack?: unknown;
  /** What was measured band by band, by view. */
  readonly reflectance?: object;
  /** How far its colours may be off, ΔE00. */
  readonly doubt?: { readonly bound: number };
  readonly note?: string;
}

/** Whether two looks saw the cup over the same backing. */
export function sharesView(one: AnyLook, other: AnyLook): boolean {
  const both = (view: 'overWhite' | 'overBlack'): boolean => one[view] !== undefined && other[view] !== undefined;
  return both('overWhite') || both('overBlack');
}

/** Whether a colour was seen in both, at times after the pour that are said and differ: what has settled since is another colour. */
export function isLater(one: AnyLook, other: AnyLook): boolean {
  const hasColour = ({ overWhite, overBlack }: AnyLook): boolean => overWhite !== undefined || overBlack !== undefined;
  const isSaid = one.after !== undefined && other.after !== undefined;
  return isSaid && one.after !== other.after && hasColour(one) && hasColour(other);
}

/**
 * Two looks at a cup over different backings as one: with what was measured and noted of both, and as vague as the vaguer of them. Of
 * what a look has once, such as its photo, the later says.
 */
export function oneLook<Look extends AnyLook>(first: Look, then: Look): Look {
  const notes = [first.note, then.note].filter((note) => note !== undefined);
  const [vaguest] = [first.doubt, then.doubt]
    .filter((doubt) => doubt !== undefined)
    .sort((one, other) => other.bound - one.bound);
  const reflectance = first.reflectance && then.reflectance && { ...first.reflectance, ...then.reflectance };
  const note = notes.length > 0 ? notes.join(' ') : undefined;
  return { ...first, ...then, ...defined({ reflectance, doubt: vaguest, note }) };
}
