/**
 * How colours of a match were measured on photos: with what doubt, by which camera.
 *
 * @packageDocumentation
 */
import type { Lab } from '../../optics/cielab.ts';
import { flakeFields, writtenColour } from '../../photo/photo-fields.ts';
import type { WrittenFields } from '../../recipe/write-front-matter.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import { parseQuantity } from '../../units/parse-quantity.ts';
import { isFault } from '../../units/quantity.ts';
import { UNITS } from '../../units/unit.ts';
import { defined } from '../../values/defined.ts';
import { deltaEText } from '../../words/difference.ts';
import { counted } from '../../words/sentence-text.ts';
import type { PhotoAnswer } from '../photo/photo-answer.ts';
import { LIMITS, MOST, within } from './limits.ts';
import type { WorkFlake } from './side-flake.ts';
import { settledLab, type WorkColour } from './work-colour.ts';

/** What photos say of colours beside the colours. */
export interface MeasuredBy {
  /** ΔE00 that nine in ten are within. */
  readonly doubt: number;
  /** The same of the contrast ratio. */
  readonly contrastDoubt?: number;
  readonly camera: string;
  /** How many photos they are the mean of. */
  readonly photos: number;
}

/** Colours that photos gave, with what they say of them. */
export interface MeasuredColours {
  readonly overWhite?: WorkColour;
  readonly overBlack?: WorkColour;
  readonly by: MeasuredBy;
  /** Kinds of flake; none where none was seen, or nothing can be said of it. */
  readonly flakes: readonly WorkFlake[];
}

/** What a match takes of photos. */
export function measuredColours({ bait, photos, camera }: Extract<PhotoAnswer, { kind: 'measured' }>): MeasuredColours {
  const { overWhite, overBlack, doubt, contrast } = bait;
  const digits = (value: number): number => Number(value.toPrecision(2));
  return {
    ...defined({ overWhite: overWhite && colourOf(overWhite), overBlack: overBlack && colourOf(overBlack) }),
    by: {
      doubt: within('doubt', digits(doubt.bound)),
      ...defined({ contrastDoubt: contrast && within('contrastDoubt', digits(contrast.bound)) }),
      camera,
      photos,
    },
    flakes: (flakeFields(bait) ?? []).slice(0, MOST.flakes).map(workFlake),
  };
}

/** As a file would have it. */
function colourOf(lab: Lab): WorkColour | undefined {
  const written = writtenColour(lab);
  if (typeof written === 'string') return written;
  const [L, a, b] = written.lab;
  return settledLab({ L, a, b });
}

/** A kind of flake as a file would have it, so that the match and the file say the same. */
function workFlake({ colour, size, coverage }: NonNullable<ReturnType<typeof flakeFields>>[number]): WorkFlake {
  const read = parseQuantity(size, ['length']);
  const mm = isFault(read) ? LIMITS.flakeMm.least : read.amount * UNITS[read.unit].size;
  return {
    hex: colour,
    sizeMm: within('flakeMm', mm),
    coverage: within('coverage', Number((Number.parseFloat(coverage) / 100).toFixed(6))),
  };
}

/** As the files of a book have it. */
export function measuredInFile(measured: MeasuredBy | undefined): WrittenFields {
  if (measured === undefined) return {};
  const { doubt, contrastDoubt, camera } = measured;
  return {
    doubt,
    'contrast-doubt': contrastDoubt === undefined ? undefined : `${formatDecimal(100 * contrastDoubt, 4)} %`,
    camera,
  };
}

/** What a match says of it, as the end of a sentence. */
export function measuredText({ doubt, camera, photos }: MeasuredBy): string {
  return `measured on ${counted(photos, 'photo')} by ${camera}, nine in ten within ΔE ${deltaEText(doubt)}`;
}

/** What a match has kept of it, checked; undefined of what is none. */
export function keptMeasured(value: unknown): MeasuredBy | undefined {
  const { doubt, contrastDoubt, camera, photos } = (typeof value === 'object' && value !== null ? value : {}) as Record<
    string,
    unknown
  >;
  const isNumber = (name: 'doubt' | 'contrastDoubt' | 'photos', number: unknown): number is number =>
    typeof number === 'number' && number >= LIMITS[name].least && number <= LIMITS[name].most;
  if (!isNumber('doubt', doubt) || typeof camera !== 'string') return undefined;
  const name = camera.replace(/\s+/g, ' ').trim();
  if (name === '' || name.length > MOST.camera) return undefined;
  return {
    doubt,
    ...(isNumber('contrastDoubt', contrastDoubt) ? { contrastDoubt } : {}),
    camera: name,
    photos: isNumber('photos', photos) ? Math.round(photos) : 1,
  };
}
