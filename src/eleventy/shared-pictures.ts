import sharp from 'sharp';
import type { Appearance } from '../book/model/colours.ts';
import type { Book } from '../book/model.ts';
import type { SiteFile } from '../output/site-file.ts';
import { paths } from '../render/links.ts';
import { SHARED_PICTURE } from '../render/shared-head.ts';
import { BLACK_CARD, WHITE_CARD } from '../render/swatch/tint.ts';

/** Side of a square of which the picture is made, px: it divides both of its sides. */
const SQUARE = 30;
/** Bare card around the film, squares. */
const MARGIN = { across: 3, down: 2 } as const;

/** Makes the pictures of a book: see `sharedPictures`. */
export type PicturesOf = (book: Book) => Promise<readonly SiteFile[]>;

/**
 * A picture for the shared links of every colour: its body as a film, over the white card above and the black one below. One whose
 * colours it has had before is not made anew.
 *
 * Only where the book says where it is published: nobody else finds them. Its book is the published one.
 */
export function sharedPictures(): PicturesOf {
  const made = new Map<string, Promise<Buffer>>();
  const pictureOf = (body: Appearance): Promise<Buffer> => {
    const key = body.overWhite.hex + body.overBlack.hex;
    const picture = made.get(key) ?? sharedPicture(body);
    made.set(key, picture);
    return picture;
  };
  return async (book) => {
    if (book.address === undefined) return [];
    return Promise.all(
      [...book.recipes, ...book.looks].map(async ({ id, body }) => ({
        path: paths.sharedPicture(id),
        content: await pictureOf(body),
      })),
    );
  };
}

/** The picture as a PNG that holds nothing but its pixels. */
export async function sharedPicture({ overWhite, overBlack }: Appearance): Promise<Buffer> {
  const [columns, rows] = [SHARED_PICTURE.width / SQUARE, SHARED_PICTURE.height / SQUARE];
  const squares = Array.from({ length: rows }, (_, row) => {
    const above = row < rows / 2;
    return Array.from({ length: columns }, (_, column) => {
      const isFilm =
        column >= MARGIN.across && column < columns - MARGIN.across && row >= MARGIN.down && row < rows - MARGIN.down;
      return isFilm ? (above ? overWhite.hex : overBlack.hex) : above ? WHITE_CARD : BLACK_CARD;
    });
  });
  const pixels = Buffer.from(
    squares
      .flat()
      .map((hex) => hex.slice(1))
      .join(''),
    'hex',
  );
  return sharp(pixels, { raw: { width: columns, height: rows, channels: 3 } })
    .resize(SHARED_PICTURE.width, SHARED_PICTURE.height, { kernel: 'nearest' })
    .png({ compressionLevel: 3 })
    .toBuffer();
}
