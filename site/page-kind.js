/**
 * An Eleventy template that writes every page of a kind. Which things have one, at what path, and what stands on it is
 * said in `src/render/pages.ts`; the plugin lends it here as the data `cupbook`.
 */
export function pageKind(kind) {
  return {
    data: {
      pagination: { data: `cupbook.items.${kind}`, size: 1, alias: 'item' },
      permalink: ({ cupbook, item }) => cupbook.path(kind, item),
      eleventyExcludeFromCollections: true,
    },
    render: ({ cupbook, item }) => cupbook.page(kind, item),
  };
}
