/**
 * What other programs may use of Cupbook. Grouped by folder, types beside values.
 *
 * @packageDocumentation
 */

// book
export { type CompileOptions, compileBook } from './book/compile-book.ts';
export type { Compiled } from './book/compiled.ts';
export type { Appearance, Colour } from './book/model/colours.ts';
export type { Change, Cup, Round } from './book/model/cup.ts';
export type { Edition } from './book/model/publish.ts';
export type { Family, Recipe, RecipeLook } from './book/model/recipe.ts';
export type { Material, Mold } from './book/model/shelf.ts';
export type { Target } from './book/model/target.ts';
export type { Book, Settings } from './book/model.ts';
export { EDITIONS } from './book/publish/editions.ts';
export { makersBook } from './book/publish/makers-book.ts';
export { publishedBook } from './book/publish/published-book.ts';
export type { Batch } from './cup/batch.ts';
// cup
export { type CupHistory, type LogStep, readLog } from './cup/cup-log.ts';
export { type CupState, concentrations } from './cup/ledger.ts';
export type { LogRound } from './cup/log-round.ts';
export { planBatch } from './cup/plan-batch.ts';
// diagnostics
export { CATALOGUE, type DiagnosticCode } from './diagnostics/catalogue.ts';
export { type Diagnostic, hasErrors, type Position } from './diagnostics/diagnostic.ts';
export { diagnosticMessage, formatDiagnostics, summarizeDiagnostics } from './diagnostics/format-diagnostics.ts';
// optics
export { appearance } from './optics/appearance.ts';
export { cupBody } from './optics/cup-body.ts';
export { deltaE00 } from './optics/delta-e00.ts';
export { mixtureConstants, type OpticalConstants } from './optics/mixture.ts';
export { type OpticalModel, USUAL_OPTICS } from './optics/optical-model.ts';
// recipe
export type { Source } from './recipe/source.ts';
export { parseDose, parseQuantity } from './units/parse-quantity.ts';
// units
export type { Quantity, Rate } from './units/quantity.ts';
