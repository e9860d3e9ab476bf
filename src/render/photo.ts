import type { Photo } from '../book/model/photo.ts';
import { type Html, html } from './html.ts';
import { link } from './links.ts';
import type { PageContext } from './page.ts';

/** Widest small picture that the build makes, px. */
const THUMB_WIDTH = 480;

/** A photo with its caption, as a link to the large picture; nothing where the build has none. */
export function photoFigure(context: PageContext, photo: Photo, alt: string): Html {
  const files = context.photos[photo.file];
  if (files === undefined) return html``;
  const { src, thumb, width, height } = files;
  const shown = Math.min(width, THUMB_WIDTH);
  const tall = Math.round((height * shown) / width);
  const text = photo.caption ?? alt;
  return html`<figure class="photo"><a href="${link(context, src)}"><img src="${link(context, thumb)}" alt="${text}" width="${shown}" height="${tall}" loading="lazy"></a>${
    photo.caption === undefined ? '' : html`<figcaption>${photo.caption}</figcaption>`
  }</figure>`;
}

/** All photos of a thing. */
export function photoFigures(context: PageContext, photos: readonly Photo[], alt: string): Html {
  const figures = photos.filter(({ file }) => context.photos[file] !== undefined);
  if (figures.length === 0) return html``;
  return html`<div class="photos">${figures.map((photo) => photoFigure(context, photo, alt))}</div>`;
}
