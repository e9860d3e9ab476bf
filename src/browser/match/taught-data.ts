import type { LearnedShelf } from '../../learning/learned-shelf.ts';
import { type PackedShelf, unpackedShelf } from '../../learning/packed-shelf.ts';
import type { MatchPageData, TaughtMatchData } from '../../render/pages/match.ts';

/** What the page knows, with what its file holds: K and S as learned stand in the page. */
export function taughtData(data: MatchPageData, packed: PackedShelf): TaughtMatchData {
  const taught = new Set(packed.materials.map(({ id }) => id));
  const constants: Record<string, LearnedShelf['constants'][string]> = {};
  for (const { id, constants: learned } of data.materials) if (learned && taught.has(id)) constants[id] = learned;
  return { ...data, learned: unpackedShelf(packed, { optics: data.optics, constants }) };
}
