import type { Book } from '../../book/model.ts';
import { paths } from '../links.ts';

/** The address of the page that measures photos, for the code on a card; undefined as long as the book has no address. */
export function measuringAddress({ address }: Pick<Book, 'address'>): string | undefined {
  return address === undefined ? undefined : address + paths.photograph;
}
