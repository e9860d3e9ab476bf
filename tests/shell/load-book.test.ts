import { chmodSync, mkdirSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import { loadBook, loadWholeBook } from '../../src/shell/load-book.ts';
import { photoOpener } from '../../src/shell/open-photos.ts';
import { pictureName } from '../../src/shell/photos.ts';
import { treeHash } from '../folder-tree.ts';
import { SMALL_BOOK, smallBook, temporaryFolder } from '../small-book.ts';

const told = ({ file, start, code, found, fix }: Diagnostic): string =>
  `${file}:${start.line}:${start.column} ${code}: ${found} → ${fix}`;

const withPhotos = (...photos: string[]): Readonly<Record<string, string>> => ({
  'colours/bog-pool.md': SMALL_BOOK['colours/bog-pool.md']!.replace(
    'mold: minnow-3\n',
    `mold: minnow-3\nphotos: [${photos.join(', ')}]\n`,
  ),
});

const JPEG = (): Promise<Buffer> =>
  sharp({ create: { width: 60, height: 40, channels: 3, background: '#7d6a3f' } })
    .jpeg()
    .toBuffer();

/** What is done as a person who is not the system's own user: that one may read everything. */
async function asAnybody<T>(act: () => T | Promise<T>): Promise<T> {
  if (process.geteuid?.() !== 0) return act();
  process.seteuid!(65_534);
  try {
    return await act();
  } finally {
    process.seteuid!(0);
  }
}

describe('loadWholeBook(folder)', () => {
  test('tells all photos that cannot be shown, each where a recipe names it, and writes nothing', async () => {
    const folder = await smallBook({
      ...withPhotos('good.jpg', 'phone.jpg', 'IMG_1.HEIC', 'empty.png', 'gone.webp'),
      'photos/phone.jpg': '\0\0\0\x18ftypheic\0\0\0\0mif1heic',
      'photos/IMG_1.HEIC': '\0\0\0\x18ftypheic\0\0\0\0mif1heic',
      'photos/empty.png': '',
    });
    writeFileSync(join(folder, 'photos/good.jpg'), await JPEG());
    const before = treeHash(folder);
    const { complete, leftOut, diagnostics } = await loadWholeBook(folder, photoOpener());
    const heic =
      'open it on the phone or computer and export or save it as JPEG; for the next ones, set the format in the settings of the phone’s camera to JPEG, often called “most compatible”';
    expect(diagnostics.map(told)).toEqual([
      `colours/bog-pool.md:5:20 photo/unreadable: photo \`phone.jpg\`, a HEIC picture → ${heic}`,
      `colours/bog-pool.md:5:31 photo/unreadable: photo \`IMG_1.HEIC\`, a HEIC picture → ${heic}`,
      'colours/bog-pool.md:5:43 photo/unreadable: photo `empty.png`, an empty file → copy it from the camera or phone again, or remove the line',
      'colours/bog-pool.md:5:54 photo/missing: photo `gone.webp` → put `gone.webp` into photos/, or remove it here',
    ]);
    expect(diagnostics[0]!.related).toEqual([
      { message: 'the photo is here', file: 'photos/phone.jpg', start: { line: 1, column: 1 } },
    ]);
    expect([complete, leftOut]).toEqual([false, []]);
    expect(treeHash(folder)).toBe(before);
  });

  test('takes a picture by what is in it, whatever its name ends in', async () => {
    const folder = await smallBook({ ...withPhotos('IMG_1.HEIC'), 'photos/.keep': '' });
    writeFileSync(join(folder, 'photos/IMG_1.HEIC'), await JPEG());
    expect((await loadWholeBook(folder, photoOpener())).diagnostics).toEqual([]);
  });

  test('calls a photo that nothing names unused, whatever is in it', async () => {
    const folder = await smallBook({ 'photos/notes.jpg': 'no picture' });
    const { book, diagnostics } = await loadWholeBook(folder, photoOpener());
    expect(diagnostics.map(({ code, severity }) => `${severity} ${code}`)).toEqual(['warning photo/unused']);
    expect(book).toBeDefined();
  });

  test('opens a photo again once it has changed', async () => {
    const folder = await smallBook({ ...withPhotos('a.jpg'), 'photos/a.jpg': 'no picture' });
    const open = photoOpener();
    expect((await loadWholeBook(folder, open)).diagnostics).toHaveLength(1);
    writeFileSync(join(folder, 'photos/a.jpg'), await JPEG());
    expect((await loadWholeBook(folder, open)).diagnostics).toEqual([]);
  });

  test('does not decode a photo again of which a picture was made', async () => {
    const folder = await smallBook({ ...withPhotos('a.jpg'), 'photos/a.jpg': 'no picture' });
    const cache = temporaryFolder();
    writeFileSync(join(cache, `${pictureName(Buffer.from('no picture'))}.webp`), '');
    expect(
      (
        await loadWholeBook(
          folder,
          photoOpener(() => cache),
        )
      ).diagnostics,
    ).toEqual([]);
    expect(
      (
        await loadWholeBook(
          folder,
          photoOpener(() => join(cache, 'none')),
        )
      ).diagnostics,
    ).toHaveLength(1);
  });

  test('names the folder that a photo lies in by mistake', async () => {
    const folder = await smallBook({ ...withPhotos('perch.jpg'), 'colours/perch.jpg': '' });
    expect(loadBook(folder).diagnostics.map(told)[0]).toBe(
      'colours/bog-pool.md:5:10 photo/missing: photo `perch.jpg` → move colours/perch.jpg to photos/',
    );
  });
});

describe('one file that cannot be read hides no other finding', () => {
  const BROKEN = { 'molds/odd.md': '---\ntitle: Odd\nbody: 2 mn\ncavity: 1 ml\n---\n' };
  const OTHER = 'molds/odd.md:3:7 field/quantity: `2 mn` → write `2 mm`';

  test.skipIf(process.platform === 'win32')('a name that is not UTF-8', async () => {
    const folder = await smallBook(BROKEN);
    writeFileSync(Buffer.concat([Buffer.from(`${folder}/colours/`), Buffer.from([0xe9, 0x2e, 0x6d, 0x64])]), 'x');
    mkdirSync(Buffer.concat([Buffer.from(`${folder}/`), Buffer.from([0xe9])]));
    expect(loadBook(folder).diagnostics.map(told)).toEqual([
      'colours/\ufffd.md:1:1 file/name: file name `\ufffd.md`, which holds bytes that are not UTF-8 → rename the file',
      OTHER,
      '\ufffd:1:1 file/name: folder name `\ufffd`, which holds bytes that are not UTF-8 → rename the folder',
    ]);
  });

  test.skipIf(process.platform === 'win32')(
    'a file or a folder without permission, and no word of what only follows',
    async () => {
      const folder = await smallBook({ ...BROKEN, 'colours/dusk.md': 'x', 'shelf/powders/frost.md': 'x' });
      const closed = ['colours/dusk.md', 'shelf/powders', 'shelf/colorants'];
      for (const path of closed) chmodSync(join(folder, path), 0);
      chmodSync(folder, 0o755);
      try {
        const fix = 'give yourself permission to read it, or move it out of the book';
        expect((await asAnybody(() => loadBook(folder))).diagnostics.map(told)).toEqual([
          `colours/dusk.md:1:1 file/not-text: a file that you may not read → ${fix}`,
          OTHER,
          `shelf/colorants:1:1 file/not-text: a folder that you may not read → ${fix}`,
          `shelf/powders:1:1 file/not-text: a folder that you may not read → ${fix}`,
        ]);
      } finally {
        for (const path of closed) chmodSync(join(folder, path), 0o755);
      }
    },
  );

  test('a shelf, molds or photos that are links, with nothing of what would be in them', async () => {
    const folder = await smallBook({ ...withPhotos('a.jpg'), 'photos/a.jpg': '' });
    for (const name of ['shelf', 'molds', 'photos']) {
      renameSync(join(folder, name), join(folder, `.${name}`));
      symlinkSync(join(folder, `.${name}`), join(folder, name));
    }
    const { diagnostics } = loadBook(folder);
    expect(diagnostics.map(told)).toEqual(
      ['molds', 'photos', 'shelf'].map(
        (name) => `${name}:1:1 file/not-text: link to another place → put the file or folder itself there`,
      ),
    );
    expect(diagnostics[0]!.why).toBe('a link may lead out of the book, so that nothing behind it is read');
  });

  test.skipIf(process.platform === 'win32')('a photo without permission', async () => {
    const folder = await smallBook({ ...BROKEN, ...withPhotos('a.jpg'), 'photos/a.jpg': 'x' });
    chmodSync(folder, 0o755);
    chmodSync(join(folder, 'photos/a.jpg'), 0);
    const { diagnostics } = await asAnybody(() =>
      loadWholeBook(
        folder,
        photoOpener(() => folder),
      ),
    );
    expect(diagnostics.map(told)).toEqual([
      'colours/bog-pool.md:5:10 photo/unreadable: photo `a.jpg`, a file that you may not read → give yourself permission to read it, or move it out of the book',
      OTHER,
    ]);
  });

  test('a photo that is a link', async () => {
    const folder = await smallBook({ ...withPhotos('a.jpg'), 'photos/b.jpg': '' });
    rmSync(join(folder, 'photos/b.jpg'));
    symlinkSync('/etc/hostname', join(folder, 'photos/a.jpg'));
    expect(loadBook(folder).diagnostics.map(({ code }) => code)).toEqual(['file/not-text']);
  });
});
