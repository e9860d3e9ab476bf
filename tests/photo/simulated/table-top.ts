import type { Chance } from '../../measure/foreign/world/chance.ts';

/** What the card lies on. */
export interface TableTop {
  /** Six numbers, as in palettes; the array is used again. */
  colourAt(x: number, y: number): ArrayLike<number>;
}

/** A table of wood, cloth or stone: one colour, with waves of lighter and darker. */
export function someTable(chance: Chance): TableTop {
  const base = 0.05 + 0.5 * chance.uniform() ** 1.5;
  const warm = chance.uniform();
  const colour = [base * (1 + 0.35 * warm), base, base * (1 - 0.4 * warm)];
  const [across, along] = [0.05 + 0.5 * chance.uniform(), 0.01 + 0.06 * chance.uniform()];
  const [deep, turned] = [0.25 * chance.uniform(), chance.uniform() * Math.PI];
  const [cos, sin] = [Math.cos(turned), Math.sin(turned)];
  const seen = new Float64Array(6);
  return {
    colourAt: (x, y) => {
      const [u, v] = [x * cos + y * sin, y * cos - x * sin];
      const wave =
        Math.sin(across * v + 2.5 * Math.sin(along * u)) + 0.5 * Math.sin(3.1 * across * v + 1.7 * along * u);
      const level = 1 + (deep * wave) / 1.5;
      for (let channel = 0; channel < 6; channel++) seen[channel] = colour[channel % 3]! * level;
      return seen;
    },
  };
}
