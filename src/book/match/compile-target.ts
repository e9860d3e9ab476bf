import type { Thing } from '../../recipe/read-thing.ts';
import { defined } from '../../values/defined.ts';
import { checkSeen } from '../cups/check-seen.ts';
import { seenByDaylight } from '../cups/seen-colour.ts';
import { measuredBands } from '../looks/compile-look.ts';
import type { Publish } from '../model/publish.ts';
import type { Mold } from '../model/shelf.ts';
import type { Target } from '../model/target.ts';
import type { Settings } from '../model.ts';
import { photoOf } from '../photo-of.ts';
import { isPartName, misnamedPart } from '../read/part-name.ts';
import type { Report } from '../report.ts';

// Thickness at which a target without a mold was seen, mm. Convention of this book.
const USUAL_MM = 6;

/** A target from its file; undefined, and reported, where it says no colour. `recipes` is filled when they are known. */
export function compileTarget(
  thing: Thing<'target'>,
  molds: ReadonlyMap<string, Omit<Mold, 'usedIn'>>,
  settings: Settings,
  publish: Publish,
  report: Report,
): Omit<Target, 'recipes'> | undefined {
  const { fields } = thing;
  const whole = fields['over-white'];
  const parts = fields.parts ?? (whole === undefined ? undefined : { body: { ...fields, 'over-white': whole } });
  if (parts === undefined || Object.keys(parts).length === 0) {
    report.add('target/no-colour', thing, [], {
      found: 'target without a colour',
      expected: '`over-white` (and `over-black`, if you can), or `parts`',
      why: 'a recipe is matched to what is seen',
      fix: 'add `over-white: "#…"`',
    });
    return undefined;
  }
  const misnamed = Object.keys(parts).filter((name) => !isPartName(name));
  for (const name of misnamed) {
    const why = 'a part has the name of the cup that it is for, and that is an id';
    report.add('file/name', thing, ['parts', name], misnamedPart('part', name, why), 'key');
  }
  if (misnamed.length > 0) return undefined;
  for (const [name, part] of Object.entries(parts))
    checkSeen(part, thing, fields.parts === undefined ? [] : ['parts', name], report);
  const mold = fields.mold === undefined ? undefined : molds.get(fields.mold);
  return {
    id: thing.id,
    title: fields.title,
    notes: thing.notes,
    publish: fields.publish ?? publish,
    publishSaid: fields.publish !== undefined,
    ...(fields.photo === undefined ? {} : { photo: photoOf(fields.photo) }),
    ...defined({ mold: mold?.id }),
    tolerance: fields.tolerance ?? settings.tolerance,
    parts: Object.entries(parts).map(([name, part]) => ({
      name,
      overWhite: seenByDaylight(part['over-white']),
      ...(part['over-black'] === undefined ? {} : { overBlack: seenByDaylight(part['over-black']) }),
      ...defined({ reflectance: measuredBands(part) }),
      thicknessMm: part.thickness ?? fields.thickness ?? mold?.bodyMm ?? USUAL_MM,
    })),
    ...(fields.apart === true ? { apart: true } : {}),
    flakes: (fields.flake ?? []).map((flake) => ({
      hex: flake.colour,
      sizeMm: flake.size,
      ...defined({ coverage: flake.coverage }),
    })),
    source: thing.source,
  };
}
