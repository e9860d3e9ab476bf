import { type UnlikeSides, unlikeSides } from '../../matching/target/unlike-sides.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import type { FieldsOf } from '../../recipe/schema.ts';
import { defined } from '../../values/defined.ts';
import { checkSeen } from '../cups/check-seen.ts';
import { seenByDaylight } from '../cups/seen-colour.ts';
import { doubtOf, measuredBands } from '../looks/compile-look.ts';
import type { Publish } from '../model/publish.ts';
import type { Mold } from '../model/shelf.ts';
import type { Target } from '../model/target.ts';
import type { Settings } from '../model.ts';
import { photoOf } from '../photo-of.ts';
import { isPartName, misnamedPart } from '../read/part-name.ts';
import type { Report } from '../report.ts';
import { labsOfPart } from './asked-cup.ts';

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
  if (fields.parts !== undefined && fields.flake !== undefined) reportFlakeBeside(thing, Object.keys(parts), report);
  const mold = fields.mold === undefined ? undefined : molds.get(fields.mold);
  const seen = Object.entries(parts).map(([name, part]) => compilePart(name, { ...saidOfAll(fields), ...part }, mold));
  return {
    id: thing.id,
    title: fields.title,
    notes: thing.notes,
    publish: fields.publish ?? publish,
    publishSaid: fields.publish !== undefined,
    ...(fields.photo === undefined ? {} : { photo: photoOf(fields.photo) }),
    ...defined({ mold: mold?.id }),
    tolerance: fields.tolerance ?? settings.tolerance,
    parts: seen,
    ...defined({ effect: fields.effect, apart: fields.apart, unlikeSides: askedOfSides(seen, thing, report) }),
    flakes: seen.flatMap(({ flakes }) => flakes),
    source: thing.source,
  };
}

type PartFields = NonNullable<FieldsOf<'target'>['parts']>[string];

/** What stands beside the parts and is meant for each that does not say it itself. */
function saidOfAll({
  thickness,
  doubt,
  'contrast-doubt': contrastDoubt,
  after,
  wet,
  camera,
  plastic,
}: FieldsOf<'target'>): Omit<PartFields, 'over-white'> {
  return defined({ thickness, doubt, 'contrast-doubt': contrastDoubt, after, wet, camera, plastic });
}

function compilePart(name: string, part: PartFields, mold: Pick<Mold, 'bodyMm'> | undefined): Target['parts'][number] {
  return {
    name,
    overWhite: seenByDaylight(part['over-white']),
    ...(part['over-black'] === undefined ? {} : { overBlack: seenByDaylight(part['over-black']) }),
    ...defined({ reflectance: measuredBands(part) }),
    thicknessMm: part.thickness ?? mold?.bodyMm ?? USUAL_MM,
    doubt: doubtOf(part)!,
    ...defined({
      contrastDoubt: part['contrast-doubt'],
      after: part.after,
      camera: part.camera,
      plastic: part.plastic,
    }),
    ...(part.wet ? { wet: true as const } : {}),
    flakes: (part.flake ?? []).map(({ colour, size, coverage }) => ({
      hex: colour,
      sizeMm: size,
      ...defined({ coverage }),
    })),
  };
}

/** The sides of a finished bait that no bait has: asked of whoever has not said how they were looked at. */
function askedOfSides(parts: Target['parts'], thing: Thing<'target'>, report: Report): UnlikeSides | undefined {
  if (thing.fields.apart !== undefined) return undefined;
  const found = unlikeSides(parts.map(labsOfPart));
  if (!found) return undefined;
  const { more, less, times, atLeast } = found;
  report.add(
    'target/unlike-sides',
    thing,
    ['parts'],
    {
      found: `\`${more}\` that lets ${times} times${atLeast ? ' or more' : ''} as much light through as \`${less}\``,
      expected: 'two sides of one bait, which let the same light through',
      why: 'a finished bait lets the same light through from either side, so these look as if each was seen alone',
      fix: 'write `apart: true` if you looked at each alone, `apart: false` if it is one bait and you looked again',
    },
    'key',
  );
  return found;
}

function reportFlakeBeside(thing: Thing<'target'>, parts: readonly string[], report: Report): void {
  const [first, ...others] = parts.map((name) => `\`parts.${name}.flake\``);
  report.add(
    'target/flake-beside-parts',
    thing,
    ['flake'],
    {
      found: '`flake` beside `parts`',
      expected: `the flake of each part in it: ${[first, ...others].join(', ')}`,
      why: 'flake lies in one side of a bait or in both, and each is a cup of its own',
      fix: `move \`flake\` to ${first}, or to whichever part shows it`,
    },
    'key',
  );
}
