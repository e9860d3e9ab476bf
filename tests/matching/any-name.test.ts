import { expect, test } from 'vitest';
import type { MatchMaterial } from '../../src/matching/shelf/match-material.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { firstRecipe, nextAddition, substitutes } from './plain-questions.ts';
import { BENCH, CLEAR, SHELF } from './sample-shelf.ts';

const flake = (id: string, colour: string): MatchMaterial => ({
  id,
  title: 'Flake',
  kind: 'flake',
  density: 1.4,
  gramsPerMl: 0.5,
  expectedDeltaE: 2,
  flake: {
    shape: 'hex',
    sizeMm: 1,
    reflectance: new Float64Array(36).fill(0.1),
    ...{ colour, acrossMm: 1, finish: 'metallic' },
  },
});

const FEW = SHELF.filter(({ id }) => /ochre|pearl|black/.test(id));

/** What is answered about cups with a flake or colour of that name, with a plain one in its place. */
function answers(kind: 'flake' | 'colour', name: string): string {
  const colours = FEW.map((each) => (kind === 'colour' && each.id === 'ochre' ? { ...each, id: name } : each));
  const flakes = [flake(kind === 'flake' ? name : 'fleck', '#1a1a1a'), flake('other-fleck', '#202020')];
  const shelf = [...colours, CLEAR, ...flakes];
  const [ochre, fleck] = [kind === 'colour' ? name : 'ochre', flakes[0]!.id];
  const target = { name: 'body', overWhite: labFromHex('#8a7040')!, overBlack: labFromHex('#4a3c20')!, thicknessMm: 9 };
  const wanted = [{ hex: '#1a1a1a', sizeMm: 1, coverage: 0.1 }];
  const asked = { shelf, bench: BENCH, tolerance: 2 };
  const cup = (materials: Readonly<Record<string, number>>) => ({ plastics: { clear: 120 }, materials });
  const seen = { overWhite: labFromHex('#b09a60')! };
  const of = { ...asked, thicknessMm: 9, cup: cup({ [ochre]: 0.2, [fleck]: 0.8, 'white-pearl': 0.3 }) };
  const all = [
    firstRecipe({
      optics: USUAL_OPTICS,
      ...asked,
      parts: [{ ...target, flakes: [...wanted, ...wanted] }],
      plastic: 'clear',
      plasticMl: 120,
    }),
    ...[{}, { [fleck]: 0.2, [ochre]: 0.3 }].map((materials) =>
      nextAddition({
        optics: USUAL_OPTICS,
        ...{ ...asked, cup: cup({ ...materials, 'gold-pearl': 0.1 }), target, flakes: wanted, seen },
      }),
    ),
    substitutes({ optics: USUAL_OPTICS, ...of, material: fleck }),
    substitutes({ optics: USUAL_OPTICS, ...of, material: 'white-pearl' }),
    substitutes({ optics: USUAL_OPTICS, ...asked, thicknessMm: 9, cup: cup({ [fleck]: 0.8 }), material: fleck }),
  ];
  return JSON.stringify(all, (_, value) => (value === name ? 'NAME' : value)).replaceAll(`"${name}"`, '"NAME"');
}

test.each(['flake', 'colour'] as const)(
  'answers of matching are the same whatever a %s is called, `constructor` too',
  (kind) => {
    const usual = answers(kind, 'construction');
    expect(usual).toContain('"NAME"');
    expect(usual).not.toContain('null');
    expect(answers(kind, 'constructor')).toEqual(usual);
  },
);
