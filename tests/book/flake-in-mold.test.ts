import { describe, expect, test } from 'vitest';
import { compileWith, file } from './sample.ts';

const FILES = {
  'shelf/flakes/brick.md': file('title: Brick .125\nlook: { colour: "#8f3f2c" }\nshape: square\nsize: 0.125 in'),
  'shelf/flakes/reed.md': file(
    'title: Reed\nlook: { colour: "#7c9a4a" }\nshape: strip\nsize: 0.015 in\nlong: 0.125 in',
  ),
  'molds/craw.md': file('title: Craw\nbait: 6.8 g\nbody: 10 mm\nthin: 2.6 mm\nthin-part: claws\ngate: 7 mm'),
  'molds/grub.md': file('title: Grub\ncavity: 2.2 ml\nbody: 8 mm\nthin: 3.5 mm\ngate: 5 mm'),
  'molds/stick.md': file('title: Stick\ncavity: 6 ml\nbody: 9 mm\nthin: 4.5 mm'),
};
const recipe = (mold: string, flake: string, front = ''): string =>
  file(`title: Barge\n${front}mold: ${mold}\ncups: { body: { plastic: 120 ml, add: { ${flake}: 1/8 tsp } } }`);

const told = (recipes: Readonly<Record<string, string>>): readonly string[] =>
  compileWith({ ...FILES, ...recipes })
    .diagnostics.filter(({ code }) => code === 'recipe/large-flake')
    .map(({ file: path, start, found }) => `${path}:${start.line}: ${found}`);

describe('flake that is too large for its mold', () => {
  test('is told where the recipe gives the flake', () => {
    expect(told({ 'colours/barge.md': recipe('craw', 'brick') })).toEqual([
      'colours/barge.md:4: Brick .125, 3.17 mm across, in Craw, which has claws 2.6 mm thick',
    ]);
    expect(told({ 'colours/barge.md': recipe('grub', 'brick') })).toEqual([
      'colours/barge.md:4: Brick .125, 3.17 mm across, in Grub, which has a gate 5 mm wide',
    ]);
  });
  test('is fine poured open, and a strip goes in end first', () => {
    expect(told({ 'colours/barge.md': recipe('stick', 'brick') })).toEqual([]);
    expect(told({ 'colours/barge.md': recipe('craw', 'reed') })).toEqual([]);
  });
  test('is told of a derived recipe only for a mold of its own, and there', () => {
    const dusk = (front: string): string => file(`title: Dusk\nfrom: barge${front}`);
    const barge = recipe('stick', 'brick');
    expect(told({ 'colours/barge.md': barge, 'colours/dusk.md': dusk('') })).toEqual([]);
    expect(told({ 'colours/barge.md': barge, 'colours/dusk.md': dusk('\nmold: craw') })).toEqual([
      'colours/dusk.md:4: Brick .125, 3.17 mm across, in Craw, which has claws 2.6 mm thick',
    ]);
    expect(told({ 'colours/barge.md': recipe('craw', 'brick'), 'colours/dusk.md': dusk('') })).toHaveLength(1);
  });
});
