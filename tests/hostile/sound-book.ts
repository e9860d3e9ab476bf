import { execFileSync } from 'node:child_process';
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** A file with front matter. */
export const file = (front: string, notes = ''): string => `---\n${front.trim()}\n---\n${notes}`;

/** What a hostile folder may hold in the place of a text. */
export type HostileContent = string | Uint8Array | { readonly link: string } | 'a folder' | 'a pipe' | undefined;

/** Contents by path; `undefined` takes a file of the sound book away. */
export type HostileFiles = Readonly<Record<string, HostileContent>>;

/** Words that stand only in what is not published. */
export const HIDDEN: readonly string[] = ['zibeline', 'gannet'];

/** A small book without mistakes that has one of everything: a log, a target, a derived bait of two cups, one of which only the look is published, and one that is hidden with its colorant. */
export const SOUND_BOOK: Readonly<Record<string, string>> = {
  'book.md': file(
    'title: Two Banks\nmaker: Tench Lane Anglers\naddress: https://book.example/banks/\ntools: { scale: 0.01 g }',
    'Written at the pump house. See [Dusk](colours/dusk.md).',
  ),
  'shelf/plastics/supple.md': file(
    'title: Supple\nhardness: soft\nhighest: 185 °C\nworking: { from: 160 °C, to: 175 °C }',
  ),
  'shelf/colorants/peat.md': file(
    'title: Peat\nhighest: 190 °C\nprice: 8\npack: 30 ml\nstock: 12 ml\nmost: 3 %\nlook: { kind: pigment, colour: "#5b4327", dose: 12 drops per 100 ml }',
  ),
  'shelf/powders/frost.md': file('title: Frost\nlook: { kind: pearl, colour: "#e8e4da", dose: 1 g per 100 ml }'),
  'shelf/flakes/gold-hex.md': file('title: Gold hexagon\nsize: 0.015 in\nlook: { colour: "#c8a24a" }'),
  'shelf/additives/salt.md': file('title: Salt'),
  'molds/minnow.md': file(
    'title: Minnow\ncavities: 2\ncavity: 5 ml\nbody: 10 mm\nthin: 2 mm\nlength: 80 mm\nsprue: 4 ml\nbag: 6',
  ),
  'targets/reed.md': file('title: Reed stem\nover-white: "#a08050"\nover-black: "#504030"\nmold: minnow'),
  'colours/dusk.md': file(
    [
      'title: Dusk\nmade: 2026-03-14\npattern: solid\nmold: minnow\nbaits: 24\nfor: reed\ntags: [clear water]',
      'cups:\n  body:\n    plastic: 120 ml supple\n    log:',
      '      - add: { peat: 9 drops }\n        heat: 171 °C',
      '      - pour: 14 ml\n        seen: { over-white: "#b09468", over-black: "#6a5a44", note: you can see through it }',
      '      - add: { frost: 1/4 tsp }\n        heat: 170 °C\n        reheat: true\n        note: stirred twice',
    ].join('\n'),
    'The hour when the carp [turn](../targets/reed.md).',
  ),
  'colours/dawn.md': file(
    [
      'title: Dawn\nfrom: dusk\npattern: laminate\ncups:',
      '  back: { share: 40 %, plastic: 100 ml supple, add: { peat: 20 drops, salt: 2 g } }',
      '  body: { from: dusk/body, set: { peat: 5 drops } }',
    ].join('\n'),
  ),
  'shelf/colorants/gannet.md': file(
    'title: Gannet\nprice: 9\npack: 30 ml\nlook: { kind: pigment, colour: "#8a9ab0", dose: 10 drops per 100 ml }',
    'From the gannet tin.',
  ),
  'colours/zibeline.md': file(
    'title: Zibeline\npublish: no\nmold: minnow\ntags: [zibeline]\ncups: { body: { plastic: 80 ml supple, add: { gannet: 4 drops, peat: 1 drop } } }',
    'Zibeline alone.',
  ),
  'colours/hush.md': file(
    'title: Hush\npublish: look\nmold: minnow\ncups: { body: { plastic: 90 ml, add: { frost: 1 g } } }',
  ),
};

/** As in the sound book, without the rounds and the target: they take most of the time of a book that is about something else. */
const PLAIN_DUSK = file(
  'title: Dusk\nmold: minnow\ncups: { body: { plastic: 120 ml supple, add: { peat: 9 drops } } }',
  'See [the stem](../targets/reed.md).',
);

/** Writes the sound book with changes into a folder, as a maker's disk would hold it. */
export function writeBook(folder: string, files: HostileFiles): void {
  const all: HostileFiles = { ...SOUND_BOOK, 'colours/dusk.md': PLAIN_DUSK, ...files };
  for (const [path, content] of Object.entries(all)) {
    if (content === undefined) continue;
    const at = join(folder, path);
    mkdirSync(dirname(at), { recursive: true });
    if (content === 'a folder') mkdirSync(at);
    else if (content === 'a pipe') execFileSync('mkfifo', [at]);
    else if (typeof content === 'object' && 'link' in content) symlinkSync(content.link, at);
    else writeFileSync(at, content);
  }
}
