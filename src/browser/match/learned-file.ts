/**
 * What the book's looks have taught, loaded when a match asks for it.
 *
 * @packageDocumentation
 */
import type { LearnedShelf } from '../../learning/learned-shelf.ts';
import { type PackedShelf, unpackedShelf } from '../../learning/packed-shelf.ts';
import { LEARNED_AS } from '../../render/learned-name.ts';
import type { MatchPageData, TaughtMatchData } from '../../render/pages/match.ts';

/** The file beside the page. A script, since a page that is opened from a disk can load nothing else. */
export class LearnedFile {
  private readonly path: string;
  private loading: Promise<PackedShelf> | undefined;

  constructor(path: string) {
    this.path = path;
  }

  /** What it holds; loaded once. Rejects where it cannot be loaded, and tries again when it is asked again. */
  load(): Promise<PackedShelf> {
    this.loading ??= loaded(this.path).catch((fault) => {
      this.loading = undefined;
      throw fault;
    });
    return this.loading;
  }
}

function loaded(path: string): Promise<PackedShelf> {
  return new Promise((resolve, reject) => {
    const script = document.createElement('script');
    const settle = (): void => {
      script.remove();
      const packed = (window as { [LEARNED_AS]?: PackedShelf })[LEARNED_AS];
      if (packed) resolve(packed);
      else reject(new Error(`${path} cannot be loaded`));
    };
    script.addEventListener('load', settle);
    script.addEventListener('error', settle);
    script.src = path;
    document.head.append(script);
  });
}

/** What the page knows, with what its file holds: K and S as learned stand in the page. */
export function taughtData(data: MatchPageData, packed: PackedShelf): TaughtMatchData {
  const taught = new Set(packed.materials.map(({ id }) => id));
  const constants: Record<string, LearnedShelf['constants'][string]> = {};
  for (const { id, constants: learned } of data.materials) if (learned && taught.has(id)) constants[id] = learned;
  return { ...data, learned: unpackedShelf(packed, { optics: data.optics, constants }) };
}
