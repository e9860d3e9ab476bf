import type { Edition } from '../book/model/publish.ts';

/** How many chips a maker has poured of something: "4 chips of yours". Readers have those that are published. */
export function ownChipsText(count: number, edition: Edition): string {
  const chips = count === 1 ? '1 chip' : `${count} chips`;
  return edition === 'mine' ? `${chips} of yours` : chips;
}
