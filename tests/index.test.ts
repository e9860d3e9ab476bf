import { expect, test } from 'vitest';
import * as cupbook from '../src/index.ts';

test('src/index.ts exports just these names: adding one is a promise, removing one breaks it', () => {
  expect(Object.keys(cupbook).sort()).toEqual([
    'CATALOGUE',
    'EDITIONS',
    'USUAL_OPTICS',
    'appearance',
    'compileBook',
    'concentrations',
    'cupBody',
    'deltaE00',
    'diagnosticMessage',
    'formatDiagnostics',
    'hasErrors',
    'makersBook',
    'mixtureConstants',
    'parseDose',
    'parseQuantity',
    'planBatch',
    'publishedBook',
    'readLog',
    'summarizeDiagnostics',
  ]);
});
