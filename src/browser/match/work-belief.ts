/**
 * What the looks of a match have taught, beside those of the book: as the book would learn them from the file that is taken away.
 *
 * @packageDocumentation
 */
import { baitKey } from '../../book/learning/cup-keys.ts';
import { keptLook, type LookSeen } from '../../book/learning/kept-look.ts';
import { lookedLayer } from '../../book/learning/looked-layer.ts';
import { type Taught, taughtBy } from '../../book/learning/taught-before.ts';
import type { CupState } from '../../cup/ledger.ts';
import { learn } from '../../learning/learn.ts';
import type { LearnedShelf } from '../../learning/learned-shelf.ts';
import type { TaughtLook } from '../../learning/learning-data.ts';
import { byCodeUnits } from '../../learning/shelf-unknowns.ts';
import type { MatchPageData, MatchPageMaterial, TaughtMatchData } from '../../render/pages/match.ts';
import { defined } from '../../values/defined.ts';
import type { MeasuredBy } from './measured-by.ts';
import { bodyOf, logShelf } from './page-shelf.ts';
import type { Work } from './work.ts';
import { hexOfColour, labOfColour, type WorkColour } from './work-colour.ts';
import { type CupNow, cupNow, doubtOfColours, type WorkLook, wholeLooks } from './work-log.ts';

/** What looks have taught, those of a match among them. */
export interface TaughtWork extends Taught<MatchPageMaterial> {
  readonly learned: LearnedShelf;
}

// No recipe of a book has such an id.
const MATCH = '~match';

const BAIT = baitKey(MATCH);

/** The name of a cup of a match among the looks: one that was begun anew is another cup. */
export function keyOfWorkCup(
  { sides }: Pick<Work, 'sides'>,
  index: number,
  rounds: readonly { readonly pouredAway?: unknown }[],
): string {
  const begun = rounds.filter(({ pouredAway }) => pouredAway !== undefined).length;
  const key = `${MATCH}/${sides[index]!.name}`;
  return begun === 0 ? key : `${key}#${begun + 1}`;
}

/** What has been taught to a match as it is. */
export function taughtByWork(work: Work, data: TaughtMatchData): TaughtWork {
  return taughtByLooks(looksOf(work, data), data);
}

/** The same, as it was before anything was seen of a cup of the match from a round on: as `taughtBefore` of a book. */
export function taughtBeforeRound(work: Work, data: TaughtMatchData, cup: string, round: number): TaughtWork {
  const before = looksOf(work, data).filter((look) => look.cup !== cup || look.round < round);
  return taughtByLooks(before, data);
}

function taughtByLooks(looks: readonly TaughtLook[], data: TaughtMatchData): TaughtWork {
  const known = memory.get(data.learned) ?? new Map<string, TaughtWork>();
  memory.set(data.learned, known);
  const key = JSON.stringify(looks);
  const taught = known.get(key) ?? learnedFrom(looks, data);
  // What was asked last is forgotten last.
  known.delete(key);
  known.set(key, taught);
  for (const oldest of known.keys()) if (known.size > REMEMBERED) known.delete(oldest);
  return taught;
}

function learnedFrom(looks: readonly TaughtLook[], { learned: ofBook, materials }: TaughtMatchData): TaughtWork {
  if (looks.length === 0) return { learned: ofBook, ...taughtBy(ofBook, materials) };
  const all = [...ofBook.data.looks, ...looks].sort((one, other) => byCodeUnits(one.key, other.key));
  const learned = learn({ materials: ofBook.data.materials, looks: all });
  return { learned, ...taughtBy(learned, materials) };
}

// The slow part of the page: worked out once for the looks as they are, as they were before the last one, and before it was taken back.
const memory = new WeakMap<LearnedShelf, Map<string, TaughtWork>>();
const REMEMBERED = 4;

/** All looks at the cups of a match, and at its finished baits, that say a colour. */
function looksOf(work: Work, data: TaughtMatchData): readonly TaughtLook[] {
  const known = new Set(data.learned.data.materials.map(({ id }) => id));
  const shelf = logShelf(data);
  const cups = work.cups.map((_, index) => cupNow(work, index, shelf));
  const bodyMm = bodyOf(work, data);
  const layer = (cup: CupState, thicknessMm: number): TaughtLook['layers'][number] =>
    lookedLayer(cup, thicknessMm, (id) => known.has(id));
  const baits = wholeLooks(cups).flatMap(({ index, round, behind, look }, place): TaughtLook[] => {
    const kept = keptLook(seenOf(look, data));
    const states = [roundOf(cups[index]!, round), roundOf(cups[1 - index]!, behind)];
    if (!kept || states.some((state) => state === undefined)) return [];
    const half = (look.thicknessMm ?? bodyMm) / 2;
    const layers = states.map((state) => layer(state!, half));
    return [{ key: `${BAIT}/${place + 1}`, cup: BAIT, round: Math.max(round, behind), layers, ...kept }];
  });
  const alone = cups.flatMap(({ rounds }, index) => {
    return rounds.flatMap(({ number, cup, seen }, at): TaughtLook[] =>
      seen.flatMap((look, place): TaughtLook[] => {
        const kept = keptLook(seenOf(look, data));
        if (!kept) return [];
        const name = keyOfWorkCup(work, index, rounds.slice(0, at + 1));
        const layers = [layer(cup, look.thicknessMm ?? bodyMm)];
        const key = `${MATCH}/${work.sides[index]!.name}/${number}/${place + 1}`;
        return [{ key, cup: name, round: number, layers, ...kept }];
      }),
    );
  });
  return [...alone, ...baits];
}

const roundOf = ({ rounds }: Pick<CupNow, 'rounds'>, number: number): CupState | undefined =>
  rounds.find((round) => round.number === number)?.cup;

/** A camera as what was learned names it: by the book's number for it, or, of one that the book has not learned from, by its own name. */
function cameraOf({ camera }: MeasuredBy, { cameras }: Pick<MatchPageData, 'cameras'>): string {
  return cameras?.[camera] ?? `~${camera}`;
}

/** The camera of a target that photos measured, as far as anything was learned from it: see `withCameraNumbers`. */
export function knownCamera(
  measured: MeasuredBy | undefined,
  work: Work,
  data: Pick<MatchPageData, 'cameras'>,
): string | undefined {
  if (measured === undefined) return undefined;
  const isOfMatch = work.cups.some(({ steps }) =>
    steps.some((step) => step.do === 'see' && step.measured?.camera === measured.camera),
  );
  return isOfMatch ? cameraOf(measured, data) : data.cameras?.[measured.camera];
}

/** A look of a match as the book would have it. */
function seenOf(look: WorkLook, data: Pick<MatchPageData, 'cameras'>): LookSeen {
  const { overWhite, overBlack, measured, checked } = look;
  const doubt = doubtOfColours(look);
  const camera = measured && cameraOf(measured, data);
  const said = (colour: WorkColour | undefined): LookSeen['overWhite'] =>
    colour === undefined
      ? undefined
      : { lab: labOfColour(colour), hex: hexOfColour(colour), mapped: typeof colour !== 'string' };
  return defined({ overWhite: said(overWhite), overBlack: said(overBlack), doubt, camera, checked });
}
