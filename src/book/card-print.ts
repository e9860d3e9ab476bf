import { GREY_VALUES, SCALE_MM } from '../measuring-card/measuring-card.ts';
import { linearFromLab } from '../optics/display.ts';
import { labByDaylight } from '../optics/stated-colour.ts';
import type { SeenColour } from '../recipe/colour-fields.ts';
import type { Thing } from '../recipe/read-thing.ts';
import type { FieldsOf } from '../recipe/schema.ts';
import { formatDecimal } from '../units/format-quantity.ts';
import { defined } from '../values/defined.ts';
import { statedColour } from './cups/seen-colour.ts';
import type { CardPrint } from './model/card-print.ts';
import type { Finding, Report } from './report.ts';

/** What the book says of its print of the measuring card. */
type Stated = NonNullable<FieldsOf<'book'>['measuring-card']>;

/** How long the printed scale may be, mm: no printer shrinks or stretches a page so far. Convention of this book. */
const [SHORTEST, LONGEST] = [70, 90];

/** How much lighter than the darkest grey the black may be measured, L: a printer may print both alike. Convention of this book. */
const BLACK_SLACK = 3;

/** The maker's own print of the measuring card, if the book says anything of it; reports what cannot be so, and goes without it. */
export function cardPrint(book: Thing<'book'> | undefined, report: Report): CardPrint | undefined {
  const stated = book?.fields['measuring-card'];
  if (book === undefined || stated === undefined) return undefined;
  const wrong = (field: keyof Stated, finding: Finding): void =>
    report.add('book/measuring-card', book, ['measuring-card', field], finding);
  const { scale = SCALE_MM, paper, black, greys } = stated;
  if (scale < SHORTEST || scale > LONGEST) {
    wrong('scale', {
      found: `${formatDecimal(scale)} mm for the printed ${SCALE_MM} mm`,
      expected: `${SHORTEST} to ${LONGEST} mm`,
      why: 'no printer shrinks or stretches a page so far',
      fix: `measure the printed ${SCALE_MM} mm again`,
    });
  }
  const greyFault = greysFault(stated);
  if (greyFault !== undefined) wrong('greys', greyFault);
  const blackFault = blackFaultOf(stated);
  if (blackFault !== undefined) wrong('black', blackFault);
  return {
    scaleMm: scale < SHORTEST || scale > LONGEST ? SCALE_MM : scale,
    ...defined({
      paper: paper === undefined ? undefined : reflectanceOf(paper),
      black: black === undefined || blackFault !== undefined ? undefined : reflectanceOf(black),
      greys: greyFault === undefined ? greys?.map(reflectanceOf) : undefined,
    }),
  };
}

function reflectanceOf(colour: SeenColour): ReturnType<typeof linearFromLab> {
  return linearFromLab(labByDaylight(statedColour(colour)));
}

function lightnessOf(colour: SeenColour): number {
  return labByDaylight(statedColour(colour)).L;
}

/** What is wrong with the greys of a card, if anything. */
function greysFault({ paper, greys }: Stated): Finding | undefined {
  if (greys === undefined) return undefined;
  const count = GREY_VALUES.length;
  if (greys.length !== count) {
    return {
      found: greys.length === 1 ? '1 grey' : `${greys.length} greys`,
      expected: `${count}, the lightest first`,
      why: `the card has ${count} in a row`,
      fix: 'measure the upper row from left to right',
    };
  }
  if (paper === undefined) {
    return {
      found: 'greys without `paper`',
      expected: 'the bare paper of the card, measured in the same way',
      why: 'a photo knows a grey only by how much darker it is than the paper',
      fix: 'measure the paper too, and write it as `paper`',
    };
  }
  const falling = [paper, ...greys].map(lightnessOf);
  const at = falling.findIndex((L, index) => index > 0 && L >= falling[index - 1]!);
  if (at < 0) return undefined;
  const [before, here] = [falling[at - 1]!, falling[at]!].map((L) => formatDecimal(Math.round(L * 10) / 10));
  return {
    found: `grey ${at} with L ${here} after ${at === 1 ? 'paper' : `grey ${at - 1}`} with L ${before}`,
    expected: 'each darker than the one before',
    why: 'the card has them so from the lightest to the darkest, all darker than the paper',
    fix: 'measure the upper row from left to right, and write the greys in that order',
  };
}

/** What is wrong with the black of a card, if anything: it is darker than all greys. */
function blackFaultOf({ paper, black, greys = [] }: Stated): Finding | undefined {
  const lighter = greys.at(-1) ?? paper;
  if (black === undefined || lighter === undefined) return undefined;
  const [L, limit] = [lightnessOf(black), lightnessOf(lighter)];
  if (L <= limit + BLACK_SLACK) return undefined;
  return {
    found: `black with L ${formatDecimal(Math.round(L * 10) / 10)}`,
    expected: `at most that of the ${greys.length > 0 ? 'darkest grey' : 'paper'}, ${formatDecimal(Math.round(limit * 10) / 10)}`,
    why: 'the black half of the window is the darkest part of the card',
    fix: 'measure the black half again',
  };
}
