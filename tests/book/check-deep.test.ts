import { describe, expect, test } from 'vitest';
import { compileWith, file } from './sample.ts';

const SOOT = 'shelf/colorants/soot.md';
const soot = (look: string): string => file(`title: Soot\nlook: ${look}`);
const BLACK = soot('{ kind: pigment, colour: "#161514", dose: 8 drops per 100 ml }');
const chip = (white: string, black: string, add = 'soot: 1 drop'): string =>
  file(`title: Chip\nplastic: 100 ml\nadd: { ${add} }\nseen: { over-white: "${white}", over-black: "${black}" }`);

/** What is told of such files in the example book. */
const told = (files: Readonly<Record<string, string>>): readonly string[] =>
  compileWith(files).diagnostics.map(({ code, file: path, start }) => `${code} ${path}:${start.line}`);

describe('a look that is as good as black', () => {
  test('is told of a material, by its colour and by its chips', () => {
    expect(told({ [SOOT]: BLACK })).toEqual([`material/deep ${SOOT}:3`]);
    const chips = (second: string): string =>
      soot(
        `{ kind: pigment, chips: [{ dose: 8 drops per 100 ml, thickness: 3 mm, over-white: "#2c2a28", over-black: "#151413" }${second}] }`,
      );
    expect(told({ [SOOT]: chips('') })).toEqual([`material/deep ${SOOT}:3`]);
    const more = ', { dose: 1 drop per 100 ml, thickness: 3 mm, over-white: "#8a8986", over-black: "#1b1a1a" }';
    expect(told({ [SOOT]: chips(more) })).toEqual([]);
  });

  test('is told until something lighter was seen with it, in a chip or in a cup', () => {
    expect(told({ [SOOT]: BLACK, 'chips/soot.md': chip('#8a8986', '#1b1a1a') })).toEqual([]);
    expect(told({ [SOOT]: BLACK, 'chips/peat.md': chip('#8a8986', '#1b1a1a', 'peat: 1 drop') })).toEqual([
      `material/deep ${SOOT}:3`,
    ]);
    const cup =
      'title: Grey\nmold: minnow\ncups: { body: { plastic: 90 ml, log: [{ add: { soot: 1 drop }, seen: { over-white: "#8a8986" } }] } }';
    expect(told({ [SOOT]: BLACK, 'colours/grey.md': file(cup) })).toEqual([]);
  });

  test('is told of a chip, which answers nothing', () => {
    expect(told({ [SOOT]: BLACK, 'chips/soot.md': chip('#141312', '#121110', 'soot: 40 drops') })).toEqual([
      'chip/deep chips/soot.md:5',
      `material/deep ${SOOT}:3`,
    ]);
  });
});
