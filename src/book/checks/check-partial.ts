import type { DiagnosticCode } from '../../diagnostics/catalogue.ts';
import { USUAL_OPTICS } from '../../optics/optical-model.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { computed } from '../computed.ts';
import { chipSpec } from '../cups/chip-spec.ts';
import type { CupShelf } from '../cups/cup-shelf.ts';
import { type CupSpec, knownRecipe } from '../cups/cup-specs.ts';
import { fillCup } from '../cups/fill-cup.ts';
import { isMaterial } from '../read/file-names.ts';
import { isCut } from '../read/is-cut.ts';
import type { Things } from '../read/read-things.ts';
import { type Report, reportOnly } from '../report.ts';
import { compileMaterial, materialAmounts } from '../shelf/compile-material.ts';
import { compileMold } from '../shelf/compile-mold.ts';

/** What can be told of a file in which something is missing, since it does not follow from what is missing. */
const TOLD: ReadonlySet<DiagnosticCode> = new Set<DiagnosticCode>([
  'recipe/unknown-material',
  'recipe/unknown-plastic',
  'recipe/unknown-recipe',
  'recipe/plastic-as-material',
  'recipe/wrong-measure',
  'recipe/add-and-log',
  'material/chip',
  'material/heat',
  'plastic/heat',
  'plastic/hot',
  'plastic/range',
  'mold/gate',
  'mold/thickness',
  'mold/two-volumes',
]);

/**
 * Checks what is sound in files with faults, and in cups that come from nowhere, so that all mistakes come in one run. Nothing is
 * told that may only follow from a fault that was told already.
 */
export function checkPartial(things: Things, cups: readonly CupSpec[], shelf: CupShelf, report: Report): void {
  const quiet = reportOnly(report, (code) => TOLD.has(code));
  // What cannot be computed of a part is nothing to tell of: `quiet` leaves it out.
  for (const thing of things.faulty.parts) computed(thing, quiet, () => checkPart(thing, things, shelf, quiet));
  for (const cup of cups) computed(cup.recipe, quiet, () => fillCup(cup, undefined, shelf, quiet));
}

function checkPart(thing: Thing, things: Things, shelf: CupShelf, report: Report): void {
  const unit = things.book?.fields.units.temperature ?? '°C';
  if (isCut(thing)) return;
  // No colour is told of: any light does.
  const known = { measured: 'unreadable', optics: USUAL_OPTICS } as const;
  if (isMaterial(thing)) compileMaterial(thing, materialAmounts(thing, unit, report), known, report);
  else if (thing.kind === 'mold') compileMold(thing, report);
  else if (thing.kind === 'chip') fillCup(chipSpec(thing), undefined, shelf, report);
  else if (thing.kind === 'recipe') {
    const recipe = thing;
    if (recipe.fields.from !== undefined) knownRecipe(recipe.fields.from, recipe, ['from'], things, report);
    for (const [name, fields] of Object.entries(recipe.fields.cups ?? {})) {
      if (fields.from !== undefined) knownRecipe(fields.from, recipe, ['cups', name, 'from'], things, report);
    }
  }
}
