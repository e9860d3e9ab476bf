import { isMaterialKind, type Kind } from '../../kinds/kinds.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { SLUG } from '../../values/slug.ts';
import { fileKey } from './file-names.ts';

interface FaultyFile {
  readonly kind: Kind;
  readonly id: string;
  readonly path: string;
}

/**
 * Files that are there and cannot be used, since they have faults, wait to be filled in, or could not be read. A reference to one is no second mistake, and what is
 * sound in one is checked as well.
 */
export class FaultyFiles {
  private readonly files = new Map<string, FaultyFile>();
  private readonly sound: Thing[] = [];
  private readonly folders = new Map<Kind, string>();
  private readonly empty = new Set<string>();

  /** Notes a file. Two kinds of material share their names. */
  add(kind: Kind, id: string, path: string): void {
    this.files.set(fileKey(kind, id), { kind, id, path });
  }

  /** Notes a file that has no faults but fields that are still empty. */
  addWaiting(kind: Kind, id: string, path: string): void {
    this.add(kind, id, path);
    this.empty.add(path);
  }

  /** Paths of the files that wait to be filled in. */
  get waiting(): ReadonlySet<string> {
    return this.empty;
  }

  /** Whether a file of that name waits to be filled in. */
  isWaiting(kind: Kind, id: string): boolean {
    return this.empty.has(this.pathOf(kind, id) ?? '');
  }

  /** Notes a folder in which any name may be. */
  addFolder(kind: Kind, path: string): void {
    this.folders.set(kind, path);
  }

  /** Notes what is sound in a file with faults: to be checked, never to be used. */
  addPart(part: Thing): void {
    this.sound.push(part);
  }

  /** What is sound in each of the files, in the order of their paths. */
  get parts(): readonly Thing[] {
    return this.sound;
  }

  /** Whether anything may be missing. */
  get isEmpty(): boolean {
    return this.files.size === 0 && this.folders.size === 0;
  }

  /** What is sound in the files of one kind. */
  partsOf<K extends Kind>(kind: K): readonly Extract<Thing, { kind: K }>[] {
    return this.sound.filter((thing): thing is Extract<Thing, { kind: K }> => thing.kind === kind);
  }

  /** Whether a file of that name is one of these, or may be one. */
  has(kind: Kind, id: string): boolean {
    return this.pathOf(kind, id) !== undefined;
  }

  /** Path of the file of that name, or of the folder that may hold it. */
  pathOf(kind: Kind, id: string): string | undefined {
    return this.files.get(fileKey(kind, id))?.path ?? this.folderOf(kind);
  }

  /** Whether the folder of a kind itself could not be read. */
  hides(kind: Kind): boolean {
    return this.folders.has(kind);
  }

  /** The folder of a kind that could not be read; of a material, that of any: they share their names. */
  folderOf(kind: Kind): string | undefined {
    const [, shelf] = [...this.folders].find(([each]) => isMaterialKind(kind) && isMaterialKind(each)) ?? [];
    return this.folders.get(kind) ?? shelf;
  }

  /** Names of the files of some kinds that can be ids: there, and so what may be meant by a misspelt name. */
  namesOf(isWanted: (kind: Kind) => boolean): readonly string[] {
    return [...this.files.values()].flatMap(({ kind, id }) => (isWanted(kind) && SLUG.test(id) ? [id] : []));
  }

  /** The kinds of the materials among them, by name. */
  get materials(): ReadonlyMap<string, Kind> {
    return new Map(
      [...this.files.values()].flatMap(({ kind, id }): [string, Kind][] => (isMaterialKind(kind) ? [[id, kind]] : [])),
    );
  }
}
