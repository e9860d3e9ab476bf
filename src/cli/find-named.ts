import type { LeftOut } from '../book/left-out.ts';
import type { Recipe } from '../book/model/recipe.ts';
import type { Material, Mold } from '../book/model/shelf.ts';
import type { Target } from '../book/model/target.ts';
import { nearestName } from '../diagnostics/nearest-name.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import { kindOfPath } from '../recipe/source.ts';
import { reportText } from '../shell/report.ts';
import type { SoundBook } from './sound-book.ts';

interface Named {
  readonly recipe: Recipe;
  readonly target: Target;
  readonly material: Material;
  readonly mold: Mold;
}

/**
 * The thing of a book that has a name.
 *
 * Throws: Refusal, with the nearest name, where there is none; and where it was left out, after showing why.
 */
export function findNamed<K extends keyof Named>(kind: K, id: string, sound: SoundBook): Named[K] {
  const { book, leftOut, loaded } = sound;
  const things = { recipe: book.recipes, target: book.targets, material: book.materials, mold: book.molds }[kind];
  const found = things.find((thing) => thing.id === id);
  if (found) return found as Named[K];
  const waiting = new Map(
    leftOut.flatMap((file) => {
      const what = kindOfPath(file.path);
      const isOne = what?.kind === kind || (kind === 'material' && file.path.startsWith('shelf/'));
      return what && isOne ? [[what.id, file] as const] : [];
    }),
  );
  const file = waiting.get(id);
  if (file !== undefined) {
    console.error(reportText(loaded));
    throw new Refusal(
      file.why === 'errors'
        ? `There are errors in ${file.path} or in what it needs, so nothing can be worked out with it. Fix what is listed above.`
        : `${file.path}, or what it needs, is still empty in places, so nothing can be worked out with it. Fill in what is listed above.`,
    );
  }
  const known = things.map((thing) => thing.id);
  const nearest = nearestName(id, [...known, ...waiting.keys()]);
  const meant = nearest === undefined ? undefined : waiting.get(nearest);
  const hint = meant === undefined ? nameHint(id, known) : ` Did you mean ${nearest}? (${leftOutWords(meant)})`;
  throw new Refusal(`The book has no ${kind} "${id}".${hint}`);
}

function leftOutWords({ why, needs }: LeftOut): string {
  const it = needs.length === 0 ? 'it' : 'what it needs';
  return `left out: ${it} ${why === 'errors' ? 'has errors' : 'is still to be filled in'}`;
}

/** What a name might have been, as a sentence after a space; empty where there is nothing to name. */
export function nameHint(id: string, names: readonly string[]): string {
  const nearest = nearestName(id, names);
  if (nearest !== undefined) return ` Did you mean ${nearest}?`;
  return names.length === 0 ? '' : ` There are: ${names.join(', ')}.`;
}
