import { type LookDoubt, lookDoubt, meansOf } from '../../optics/look-doubt.ts';
import { isMeasured, type TargetColour } from '../../recipe/colour-fields.ts';
import type { FieldsOf } from '../../recipe/schema.ts';
import { defined } from '../../values/defined.ts';
import { reflectanceBesideGloss, seenByDaylight } from '../cups/seen-colour.ts';
import type { Look } from '../model/looks.ts';
import { photoOf } from '../photo-of.ts';

/** A look as a file has it. */
export type LookFields = Omit<NonNullable<FieldsOf<'recipe'>['seen']>[number], 'side' | 'rounds'>;

/** A look from its fields; one in which no colour is noted has no doubt. */
export function compileLook(fields: LookFields): Look {
  const { 'over-white': white, 'over-black': black, note, photo, camera, thickness, after } = fields;
  return {
    ...defined({
      overWhite: white === undefined ? undefined : seenByDaylight(white),
      overBlack: black === undefined ? undefined : seenByDaylight(black),
      reflectance: measuredBands(fields),
      doubt: doubtOf(fields),
      contrastDoubt: fields['contrast-doubt'],
      note,
      photo: photo && photoOf(photo),
      camera,
      thicknessMm: thickness,
      after,
    }),
    ...(fields.checked ? { checked: true } : {}),
    ...(fields.wet ? { wet: true } : {}),
  };
}

/** How far the colours of a look may be off; undefined where none is noted. */
export function doubtOf({
  'over-white': white,
  'over-black': black,
  doubt,
  camera,
  after,
  wet,
}: Pick<LookFields, 'over-white' | 'over-black' | 'doubt' | 'camera' | 'after' | 'wet'>): LookDoubt | undefined {
  const colours = [white, black].filter((colour) => colour !== undefined);
  return colours.length === 0 ? undefined : lookDoubt(meansOf(colours, camera), doubt, defined({ after, wet }));
}

/** What was measured band by band, on the bands of the book; undefined where nothing was. */
export function measuredBands({
  'over-white': white,
  'over-black': black,
}: Pick<LookFields, 'over-white' | 'over-black'>): Look['reflectance'] {
  const kept = (colour: TargetColour | undefined): readonly number[] | undefined =>
    colour !== undefined && isMeasured(colour)
      ? Array.from(reflectanceBesideGloss(colour), (share) => Number(share.toFixed(4)))
      : undefined;
  const bands = defined({ overWhite: kept(white), overBlack: kept(black) });
  return Object.keys(bands).length === 0 ? undefined : bands;
}
