import type { LoggedAmount } from '../book/log-text.ts';
import type { Chance } from '../world/chance.ts';
import { usualDose } from '../world/products.ts';
import type { World } from '../world/world.ts';

/** Of so many additions the log does not say what went in; so many looks are at another cup. */
const FALSE_ADDITIONS = 0.035;
const FALSE_LOOKS = 0.02;
/** Something that went in unnoticed is this part of its usual dose at least, and all of it at most. */
const LEAST_UNLOGGED = 0.1;

/** What a log has wrong. */
export type Slip =
  /** Something went in beside what is logged. */
  | { readonly kind: 'unlogged'; readonly material: string }
  /** It is logged and did not go in. */
  | { readonly kind: 'not-made'; readonly material: string }
  /** Another bottle was taken than is logged. */
  | { readonly kind: 'wrong-bottle'; readonly material: string; readonly logged: string }
  /** The look is of another cup. */
  | { readonly kind: 'other-cup' };

/** A slip, with how far it alone puts off what is looked at, ΔE00; of several in one step each has that of all of them. */
export type SizedSlip = Slip & { readonly size: number };

/** What really goes into a cup for what is logged, with what is wrong of it. */
export interface Performed {
  readonly amounts: readonly LoggedAmount[];
  readonly slips: readonly Slip[];
}

/** Additions as a careless maker performs them. */
export function performed(logged: readonly LoggedAmount[], plasticMl: number, world: World, chance: Chance): Performed {
  const amounts: LoggedAmount[] = [];
  const slips: Slip[] = [];
  for (const each of logged) {
    if (chance.uniform() >= FALSE_ADDITIONS) {
      amounts.push(each);
      continue;
    }
    const kind = chance.oneOf(['unlogged', 'not-made', 'wrong-bottle'] as const);
    const others = world.shelf.filter(({ product }) => product.id !== each.material);
    const other = chance.oneOf(others).product;
    if (kind === 'unlogged') {
      const grams = usualDose(other) * plasticMl * LEAST_UNLOGGED ** chance.uniform();
      amounts.push(each, { material: other.id, grams, text: 'by the eye' });
      slips.push({ kind, material: other.id });
    } else if (kind === 'not-made') {
      slips.push({ kind, material: each.material });
    } else {
      // As many drops, or as full a spoon, of the other.
      const grams = (each.grams * usualDose(other)) / usualDose(productOf(world, each.material));
      amounts.push({ ...each, material: other.id, grams });
      slips.push({ kind, material: other.id, logged: each.material });
    }
  }
  return { amounts, slips };
}

/** Whether a look is at another cup. */
export function looksAtOther(chance: Chance): boolean {
  return chance.uniform() < FALSE_LOOKS;
}

function productOf({ shelf }: World, id: string): World['shelf'][number]['product'] {
  const found = shelf.find(({ product }) => product.id === id);
  if (!found) throw new RangeError(`${id} is not on the shelf`);
  return found.product;
}
