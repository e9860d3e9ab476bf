import type { Thing } from '../../recipe/read-thing.ts';
import { PLASTIC_DENSITY } from '../../tables/material-defaults.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import { defined } from '../../values/defined.ts';
import { asWritten } from '../cups/as-written.ts';
import type { Assumption, Mold } from '../model/shelf.ts';
import { photoOf } from '../photo-of.ts';
import type { Report } from '../report.ts';

// A wider one is a slip of the unit: convention of this book.
const WIDEST_GATE = 2;

// Volume of a bait in that of a round bar as long and as thick: beyond these a number or its unit is a slip. Convention of this book;
// our drawings hold 0.55 to 0.9, and can be drawn from 0.3 to 1.0, the stoutest of them to 1.4.
const LEAST_OF_BAR = 0.25;
const MOST_OF_BAR = 1.6;

/** A mold from its file; undefined where it has faults. `usedIn` is filled when the recipes are known. */
export function compileMold(thing: Thing<'mold'>, report: Report): Omit<Mold, 'usedIn'> | undefined {
  const { fields } = thing;
  const thinMm = fields.thin ?? Math.min(2, fields.body);
  const assumptions: Assumption[] = [];
  let sound = true;
  if (fields.cavity === undefined && fields.bait === undefined) {
    sound = false;
    report.add('mold/no-volume', thing, ['cavity'], {
      found: 'mold without the size of its bait',
      expected: '`cavity`, the volume of one, or `bait`, the mass of a plain one',
      why: 'batches are counted in baits',
      fix: 'weigh a plain bait and write `bait: 3.4 g`',
    });
  }
  if (fields.cavity !== undefined && fields.bait !== undefined) {
    const baitMl = fields.bait / PLASTIC_DENSITY;
    report.add('mold/two-volumes', thing, ['bait'], {
      found: `both \`cavity\`, ${formatDecimal(fields.cavity)} ml, and \`bait\`, ${formatDecimal(fields.bait)} g or ${formatDecimal(baitMl)} ml at ${PLASTIC_DENSITY} g/ml`,
      expected: 'one of them',
      why: '`cavity` counts, and `bait` is not read',
      fix: 'remove `bait`, or `cavity` if you trust the scale more',
    });
  }
  const written = (name: 'thin' | 'body' | 'gate' | 'length', mm: number): string =>
    asWritten(thing, [name], { amount: Number(formatDecimal(mm)), unit: 'mm' }).text;
  if (thinMm > fields.body) {
    sound = false;
    report.add('mold/thickness', thing, ['thin'], {
      found: `thin part of ${written('thin', thinMm)}`,
      expected: `at most the body's ${written('body', fields.body)}`,
      why: 'the thin part is what light passes most easily',
      fix: 'exchange `thin` and `body`, or correct one',
    });
  }
  if (fields.gate !== undefined && fields.gate > WIDEST_GATE * fields.body) {
    report.add('mold/gate', thing, ['gate'], {
      found: `gate ${written('gate', fields.gate)} wide at its narrowest`,
      expected: `at most ${WIDEST_GATE} times the body's ${written('body', fields.body)}`,
      why: 'a bait is filled through a hole that is smaller than its body',
      fix: 'correct the number or its unit, or remove the line where you pour open',
    });
  }
  if (!sound) return undefined;
  const cavityMl = fields.cavity ?? fields.bait! / PLASTIC_DENSITY;
  if (fields.length !== undefined) {
    const barMl = ((Math.PI / 4) * fields.body ** 2 * fields.length) / 1000;
    if (cavityMl < LEAST_OF_BAR * barMl || cavityMl > MOST_OF_BAR * barMl) {
      const volume = (ml: number): string => formatDecimal(ml, 2);
      report.add('mold/length', thing, ['length'], {
        found: `bait of ${volume(cavityMl)} ml, ${written('length', fields.length)} long and ${written('body', fields.body)} thick`,
        expected: `${volume(LEAST_OF_BAR * barMl)} to ${volume(MOST_OF_BAR * barMl)} ml for that length and thickness`,
        why: 'batches are counted by the volume, and pictures drawn by all three',
        fix: 'correct the number that is off, or its unit',
      });
    }
  }
  if (fields.cavity === undefined) assumptions.push({ kind: 'cavity', gramsPerMl: PLASTIC_DENSITY });
  if (fields.sprue === undefined) assumptions.push({ kind: 'no-sprue' });
  return {
    id: thing.id,
    title: fields.title,
    notes: thing.notes,
    photos: (fields.photos ?? []).map(photoOf),
    cavities: fields.cavities,
    cavityMl,
    sprueMl: fields.sprue ?? 0,
    bodyMm: fields.body,
    thinMm,
    thinPart: fields['thin-part'],
    ...defined({ gateMm: fields.gate, lengthMm: fields.length }),
    shape: fields.shape,
    ...defined({
      bag: fields.bag,
      method: fields.method ?? (fields.shape === 'tube' ? 'dipped' : undefined),
      manifold: fields.manifold,
      rejects: fields.rejects,
    }),
    assumptions,
    source: thing.source,
  };
}
