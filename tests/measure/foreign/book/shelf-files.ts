import type { Source } from '../../../../src/recipe/source.ts';
import { frontMatterText, type WrittenFields } from '../../../../src/recipe/write-front-matter.ts';
import type { Condition } from '../conditions.ts';
import { typedHex } from '../physics/eye.ts';
import { seenPour } from '../physics/pour.ts';
import type { Chance } from '../world/chance.ts';
import { cameraOf, noted } from '../world/eye-noise.ts';
import { DROP_ML, PLASTIC_DENSITY, usualDose } from '../world/products.ts';
import { POUR_MM } from '../world/true-cup.ts';
import type { Bottle, World } from '../world/world.ts';

/** ΔE00, root mean square, that a hex of a shop is off by, and each view of a chip. */
const HEX_DEVIATION = 2;
const CHIP_DEVIATION = 1.3;
/** A chip is so thick, or half of that again and again until it is lighter by so much, L, over white than over black. */
const CHIP_MM = 3;
const SHOWS_THROUGH = 3;
const LEAST_MM = 0.2;
const DYE_MM = 10;
/** Nothing shows through so much of anything but a dye. */
const HIDING_MM = 60;

/** The files of a book before its first recipe: the book, its mold, its plastic and its shelf, with labels of the products as they are sold. */
export function shelfFiles(world: World, condition: Condition, chance: Chance): readonly Source[] {
  const chipped = new Set(
    condition.labels === 'hex' ? [] : chance.some(world.shelf, Math.floor(world.shelf.length / 2)),
  );
  return [
    file('book.md', {
      title: 'A foreign book',
      tools: {
        drops: true,
        spoons: ['1 tsp', '1/2 tsp', '1/4 tsp', '1/8 tsp', '1 pinch', '1 smidgen'],
        ...(condition.scale ? { scale: '0.01 g' } : {}),
      },
      tolerance: 2,
      plastic: 'clear',
    }),
    file('molds/stick.md', {
      title: 'Stick',
      cavities: 6,
      cavity: '6 ml',
      body: `${POUR_MM} mm`,
      thin: '3 mm',
    }),
    file('shelf/plastics/clear.md', {
      title: 'Clear',
      look: { kind: 'clear' },
      density: `${PLASTIC_DENSITY} g/ml`,
      working: { from: '160 °C', to: '175 °C' },
    }),
    ...world.shelf.map((bottle) => materialFile(bottle, chipped.has(bottle), world, condition, chance)),
  ];
}

function materialFile(bottle: Bottle, isChip: boolean, world: World, condition: Condition, chance: Chance): Source {
  const { id, title, kind, dose, density } = bottle.product;
  const isLiquid = 'drops' in dose;
  const doseText = isLiquid ? `${dose.drops} drops per 100 ml` : `${dose.percent} %`;
  const look = isChip
    ? { kind, chips: [{ dose: doseText, ...chipLook(bottle, world, chance) }] }
    : { kind, colour: hexLabel(bottle, world, condition, chance), dose: doseText };
  return file(`shelf/${isLiquid ? 'colorants' : 'powders'}/${id}.md`, {
    title,
    look,
    density: `${density} g/ml`,
    ...(isLiquid ? { drop: `${DROP_ML} ml` } : {}),
  });
}

/** A chip of the product, not of the maker's own bottle: as shallow as it must be for a card to show through. */
function chipLook({ nominal, product }: Bottle, { plastic }: World, chance: Chance): WrittenFields {
  const camera = cameraOf('instrument', CHIP_DEVIATION, chance);
  const contents = [{ substance: nominal, gramsPerMl: usualDose(product) }];
  for (let thicknessMm = CHIP_MM; ; thicknessMm /= 2) {
    const seen = noted(seenPour({ plastic, contents, thicknessMm }), camera, chance);
    if (seen.white.L - seen.black.L < SHOWS_THROUGH && thicknessMm > LEAST_MM) continue;
    return {
      thickness: `${thicknessMm} mm`,
      'over-white': typedHex(seen.white),
      'over-black': typedHex(seen.black),
    };
  }
}

/** The hex that a shop shows: over white, of a dye through 10 mm, of anything else as in a bait, or of a body that hides. */
function hexLabel({ nominal, product }: Bottle, { plastic }: World, condition: Condition, chance: Chance): string {
  const thicknessMm = product.kind === 'dye' ? DYE_MM : condition.thickLabels ? HIDING_MM : POUR_MM;
  const truth = seenPour({
    plastic,
    contents: [{ substance: nominal, gramsPerMl: usualDose(product) }],
    thicknessMm,
  });
  return typedHex(noted(truth, cameraOf('instrument', HEX_DEVIATION, chance), chance).white);
}

/** A file of a book. */
export function file(path: string, fields: WrittenFields): Source {
  return { path, text: frontMatterText(fields) };
}
