/**
 * What the file of each kind of material says: how it is measured out, and how it looks.
 *
 * @packageDocumentation
 */

import type { HeatsBorne } from '../../cup/heats-borne.ts';
import { ADDITIVE_USES } from '../../kinds/additive-uses.ts';
import type { MaterialKind } from '../../kinds/kinds.ts';
import { type FlakeCut, flakeMass } from '../../optics/flake.ts';
import { flakeReflectance } from '../../optics/flake-colour.ts';
import { plasticConstants } from '../../optics/plastic.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { FLAKE_FILM_DENSITY, FLAKE_FILM_THICKNESS } from '../../tables/flake-film.ts';
import {
  DROP_ML,
  FLAKE_HEATS,
  FLAKE_TRANSMITTANCE,
  HEATS,
  LIQUID_DENSITY,
  PLASTIC_DENSITY,
  POWDER_BULK,
  POWDER_DENSITY,
  SOLID_ADDITIVE_BULK,
  SOLID_ADDITIVE_DENSITY,
  WHITE_LIQUID_DENSITY,
} from '../../tables/material-defaults.ts';
import { UNITS } from '../../units/unit.ts';
import type { Assumption, FlakeProperties, Material } from '../model/shelf.ts';
import type { Report } from '../report.ts';
import { usualFlakeBulk, usualFlakeLoad } from './flake-usual.ts';
import { keptConstants, type LookContext, type MaterialLook, materialLook } from './material-look.ts';

/** How a material is weighed out and what room it takes, with the defaults named that were used. */
export interface MaterialHandling {
  /** g/ml of the substance itself. */
  readonly density: number;
  /** g/ml as it lies in a spoon; a liquid's density. */
  readonly gramsPerMl: number;
  /** Absent for what is not dropped. */
  readonly gramsPerDrop?: number;
  readonly assumptions: readonly Assumption[];
}

/** Handling of a material from its file. */
export function handlingOf(thing: Thing<MaterialKind>): MaterialHandling {
  const assumptions: Assumption[] = [];
  const assume = <T extends number>(stated: T | undefined, usual: T, what: (usual: T) => Assumption): number => {
    if (stated !== undefined) return stated;
    assumptions.push(what(usual));
    return usual;
  };
  const density = (stated: number | undefined, usual: number): number =>
    assume(stated, usual, (gramsPerMl) => ({ kind: 'density', gramsPerMl }));
  const bulk = (stated: number | undefined, usual: number): number =>
    assume(stated, usual, (gramsPerMl) => ({ kind: 'bulk', gramsPerMl }));
  const liquid = (
    stated: number | undefined,
    drop: number | { count: number; mass: number } | undefined,
    usual = LIQUID_DENSITY,
  ): MaterialHandling => {
    const gramsPerMl = density(stated, usual);
    const gramsPerDrop =
      typeof drop === 'object'
        ? drop.mass / drop.count
        : assume(drop, DROP_ML, (ml) => ({ kind: 'drop', ml })) * gramsPerMl;
    return { density: gramsPerMl, gramsPerMl, gramsPerDrop, assumptions };
  };

  switch (thing.kind) {
    case 'colorant': {
      const { fields } = thing;
      return liquid(fields.density, fields.drop, fields.look?.kind === 'white' ? WHITE_LIQUID_DENSITY : LIQUID_DENSITY);
    }
    case 'powder': {
      const { fields } = thing;
      const kind = usualPowder(fields.look.kind);
      return {
        density: density(fields.density, POWDER_DENSITY[kind]),
        gramsPerMl: bulk(fields.bulk, POWDER_BULK[kind]),
        assumptions,
      };
    }
    case 'flake': {
      const { fields } = thing;
      const gramsPerMl = bulk(fields.bulk, usualFlakeBulk(Math.max(fields.size, fields.long ?? 0)));
      return { density: fields.density ?? FLAKE_FILM_DENSITY, gramsPerMl, assumptions };
    }
    case 'plastic': {
      const { fields } = thing;
      const gramsPerMl = density(fields.density, PLASTIC_DENSITY);
      return { density: gramsPerMl, gramsPerMl, assumptions };
    }
    case 'additive': {
      const { fields } = thing;
      const unsaid = fields.drop === undefined && fields.density === undefined && fields.use === undefined;
      const byWeight = fields.pack !== undefined && UNITS[fields.pack.unit].dimension === 'mass';
      const solid =
        fields.use === undefined
          ? (unsaid && byWeight) || (fields.density ?? 0) >= 1.5
          : ADDITIVE_USES[fields.use].solid;
      if (fields.bulk === undefined && (fields.drop !== undefined || !solid)) {
        if (unsaid) assumptions.push({ kind: 'liquid' });
        return liquid(fields.density, fields.drop);
      }
      if (fields.bulk === undefined && unsaid) assumptions.push({ kind: 'salt' });
      return {
        density: density(fields.density, SOLID_ADDITIVE_DENSITY),
        gramsPerMl: bulk(fields.bulk, SOLID_ADDITIVE_BULK),
        assumptions,
      };
    }
  }
}

/** What a powder is taken for by the kind that its file states: most that no kind is stated of, or that were measured, are pearls. */
export function usualPowder(
  stated: 'dye' | 'pigment' | 'pearl' | 'white' | 'clear' | 'measured' | undefined,
): keyof typeof POWDER_BULK {
  return stated === undefined || stated === 'measured' ? 'pearl' : stated;
}

/** How many heats a material bears, by its file or as such materials do; undefined for salt, which heat does nothing to. */
export function heatsBorne(thing: Thing<MaterialKind>, { gramsPerDrop }: MaterialHandling): HeatsBorne | undefined {
  const { bears } = thing.fields;
  if (bears !== undefined) return { from: bears, to: bears };
  if (thing.kind === 'flake') return { ...FLAKE_HEATS[thing.fields.finish], usual: true };
  const isSalt = thing.kind === 'additive' && gramsPerDrop === undefined;
  return isSalt ? undefined : { ...HEATS, usual: true };
}

/** What a file says of a material's look. */
type LookOf = Partial<Pick<MaterialLook, 'constants' | 'typical' | 'fit' | 'doubt'>> & {
  readonly tier: Material['tier'];
  readonly expectedDeltaE: number;
  readonly flake?: FlakeProperties;
  readonly assumptions: readonly Assumption[];
};

/** The look of a material from its file; undefined, and reported, where it cannot be. */
export function lookOf(
  thing: Thing<MaterialKind>,
  handling: MaterialHandling,
  known: LookContext,
  report: Report,
): LookOf | undefined {
  switch (thing.kind) {
    case 'plastic': {
      const { fields } = thing;
      return {
        constants: keptConstants(plasticConstants(fields.look.kind)),
        tier: 'estimated',
        expectedDeltaE: 2,
        assumptions: [{ kind: 'typical-plastic', plastic: fields.look.kind }],
      };
    }
    case 'flake':
      return flakeLook(thing, handling);
    case 'additive': {
      const { fields } = thing;
      if (fields.look === undefined) {
        return { tier: 'estimated', expectedDeltaE: 0, assumptions: [{ kind: 'no-colour' }] };
      }
      const look = materialLook(thing, fields.look, handling, known, report);
      return look && { ...look, assumptions: [] };
    }
    case 'colorant':
    case 'powder': {
      const { fields } = thing;
      // A file without it is of a cut, which is no material.
      if (fields.look === undefined) return undefined;
      const look = materialLook(thing, fields.look, handling, known, report);
      return (
        look && {
          ...look,
          assumptions: look.tier === 'estimated' ? [{ kind: 'strength' }] : [],
        }
      );
    }
  }
}

// For the optics a strip is the square of the same area: only the area of a face matters there.
const OPTICAL_SHAPES = { hexagon: 'hex', square: 'square', round: 'round', strip: 'square' } as const;

function flakeLook(thing: Thing<'flake'>, { gramsPerMl }: MaterialHandling): LookOf {
  const { fields } = thing;
  const filmMm = fields.film ?? FLAKE_FILM_THICKNESS;
  const density = fields.density ?? FLAKE_FILM_DENSITY;
  const strip = fields.shape === 'strip';
  const cut: FlakeCut = {
    shape: OPTICAL_SHAPES[fields.shape],
    sizeMm: strip ? Math.sqrt(fields.size * (fields.long ?? fields.size)) : fields.size,
    filmMm,
    density,
  };
  const reflectance = flakeReflectance(fields.look.colour);
  const flake: FlakeProperties = {
    ...cut,
    filmMm,
    density,
    transmittance: FLAKE_TRANSMITTANCE[fields.finish],
    reflectance: Array.from(reflectance, (value) => Number(value.toFixed(5))),
    outline: fields.shape,
    acrossMm: fields.size,
    ...(strip && fields.long !== undefined ? { longMm: fields.long } : {}),
    finish: fields.finish,
    colour: fields.look.colour,
    gramsPerFlake: flakeMass(cut),
  };
  const assumptions: readonly Assumption[] = fields.film === undefined ? [{ kind: 'film', mm: filmMm }] : [];
  return { tier: 'estimated', expectedDeltaE: 6, flake, typical: usualFlakeLoad(fields.size, gramsPerMl), assumptions };
}
