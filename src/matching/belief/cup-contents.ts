import type { LookedLayer } from '../../learning/learning-data.ts';

/** What is in a cup: shares of plastics, and g per ml of what is seen. */
export type CupContents = Omit<LookedLayer, 'thicknessMm'>;
