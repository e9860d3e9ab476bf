import type { LearningData } from '../../src/learning/learning-data.ts';
import type { Lab } from '../../src/optics/cielab.ts';
import { type SimulatedBook, simulatedBook } from './simulated-book.ts';

const kept = ({ L, a, b }: Lab): Lab => ({ L: digits(L), a: digits(a), b: digits(b) });
const digits = (value: number): number => Number(value.toFixed(4));

/** A made-up book with as many digits as a book keeps of a colour and of a dose. */
export function keptBook(made: SimulatedBook): LearningData {
  const { materials, looks } = simulatedBook(made).data;
  return {
    materials,
    looks: looks.map((look) => ({
      ...look,
      overWhite: kept(look.overWhite!),
      overBlack: kept(look.overBlack!),
      layers: look.layers.map((layer) => ({
        ...layer,
        contents: layer.contents.map(([id, dose]) => [id, Number(dose.toPrecision(6))] as const),
      })),
    })),
  };
}
