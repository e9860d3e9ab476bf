/**
 * An Eleventy template that writes every page of a kind. Which things have one, at what path, and what stands on it is
 * said in `src/render/pages.ts`; the plugin lends it here.
 */
export function pageKind(kind) {
  return {
    data: {
      pagination: { data: `cupbook.${kind}`, size: 1, alias: 'item' },
      permalink({ item }) {
        return this.cupbookPath(kind, item);
      },
      eleventyExcludeFromCollections: true,
    },
    render({ item }) {
      return this.cupbookPage(kind, item);
    },
  };
}
