/** Shapes of baits that we can draw. */
export const SHAPE_NAMES = ['minnow', 'worm', 'grub', 'craw', 'stick', 'tube', 'creature'] as const;

export type ShapeName = (typeof SHAPE_NAMES)[number];
