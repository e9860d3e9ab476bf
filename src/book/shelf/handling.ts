import type { Thing } from '../../recipe/read-thing.ts';
import type { MaterialKind } from '../../recipe/source.ts';
import { FLAKE_FILM_DENSITY } from '../../tables/flake-film.ts';
import {
  DROP_ML,
  FLAKE_BULK,
  LIQUID_DENSITY,
  PLASTIC_DENSITY,
  POWDER_BULK,
  POWDER_DENSITY,
  SOLID_ADDITIVE_BULK,
  SOLID_ADDITIVE_DENSITY,
} from '../../tables/material-defaults.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import { UNITS } from '../../units/unit.ts';

/** How a material is weighed out and what room it takes, with the defaults named that were used. */
export interface MaterialHandling {
  /** g/ml of the substance itself. */
  readonly density: number;
  /** g/ml as it lies in a spoon; a liquid's density. */
  readonly gramsPerMl: number;
  /** Absent for what is not dropped. */
  readonly gramsPerDrop?: number;
  readonly assumptions: readonly string[];
}

/** Handling of a material from its file. */
export function handlingOf(thing: Thing<MaterialKind>): MaterialHandling {
  const assumptions: string[] = [];
  const assume = <T extends number>(stated: T | undefined, usual: T, what: (usual: string) => string): number => {
    if (stated !== undefined) return stated;
    assumptions.push(what(formatDecimal(usual)));
    return usual;
  };
  const density = (stated: number | undefined, usual: number): number =>
    assume(stated, usual, (value) => `density ${value} g/ml, not stated`);
  const bulk = (stated: number | undefined, usual: number): number =>
    assume(stated, usual, (value) => `a level millilitre weighs ${value} g, not weighed`);
  const liquid = (
    stated: number | undefined,
    drop: number | { count: number; mass: number } | undefined,
  ): MaterialHandling => {
    const gramsPerMl = density(stated, LIQUID_DENSITY);
    const gramsPerDrop =
      typeof drop === 'object'
        ? drop.mass / drop.count
        : assume(drop, DROP_ML, (value) => `a drop is ${value} ml, not weighed`) * gramsPerMl;
    return { density: gramsPerMl, gramsPerMl, gramsPerDrop, assumptions };
  };

  switch (thing.kind) {
    case 'colorant': {
      const { fields } = thing;
      return liquid(fields.density, fields.drop);
    }
    case 'powder': {
      const { fields } = thing;
      const stated = fields.look.kind;
      const kind = stated === undefined || stated === 'measured' ? 'pearl' : stated;
      return {
        density: density(fields.density, POWDER_DENSITY[kind]),
        gramsPerMl: bulk(fields.bulk, POWDER_BULK),
        assumptions,
      };
    }
    case 'flake': {
      const { fields } = thing;
      return { density: fields.density ?? FLAKE_FILM_DENSITY, gramsPerMl: bulk(fields.bulk, FLAKE_BULK), assumptions };
    }
    case 'plastic': {
      const { fields } = thing;
      const gramsPerMl = density(fields.density, PLASTIC_DENSITY);
      return { density: gramsPerMl, gramsPerMl, assumptions };
    }
    case 'additive': {
      const { fields } = thing;
      const unsaid = fields.drop === undefined && fields.density === undefined;
      const byWeight = fields.pack !== undefined && UNITS[fields.pack.unit].dimension === 'mass';
      if (
        fields.bulk === undefined &&
        !(unsaid && byWeight) &&
        (fields.drop !== undefined || (fields.density ?? 0) < 1.5)
      ) {
        if (unsaid) assumptions.push('taken for a liquid; salt or a powder has `bulk` in its file');
        return liquid(fields.density, fields.drop);
      }
      if (fields.bulk === undefined && unsaid) assumptions.push('taken for salt, since its pack is told by weight');
      return {
        density: density(fields.density, SOLID_ADDITIVE_DENSITY),
        gramsPerMl: bulk(fields.bulk, SOLID_ADDITIVE_BULK),
        assumptions,
      };
    }
  }
}
