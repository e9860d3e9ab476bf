import type { MaterialKind } from '../../kinds/kinds.ts';
import type { TaughtMaterial } from '../../learning/learning-data.ts';
import type { Flake } from '../../optics/flake.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { defined } from '../../values/defined.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';
import { labelsOf } from './material-labels.ts';

type Prior = TaughtMaterial['prior'];

/** A material of the shelf with what is believed of it before any look; undefined of one that does not colour. */
export function taughtMaterial(thing: Thing<MaterialKind>, material: MaterialCore): TaughtMaterial | undefined {
  const prior = priorOf(thing, material);
  if (prior === undefined || prior.kind === 'known') return prior && { id: material.id, prior, labels: [] };
  const labels = labelsOf(thing, material);
  const isSeenOverBoth = labels.some(({ overWhite, overBlack }) => overWhite && overBlack);
  const isTwoViewPearl = prior.kind === 'pearl' && isSeenOverBoth;
  return { id: material.id, prior: isTwoViewPearl ? { ...prior, kind: 'twoViewPearl' } : prior, labels };
}

function priorOf(thing: Thing<MaterialKind>, material: MaterialCore): Prior | undefined {
  const { kind, constants, doubt, flake, tier, typical } = material;
  if (flake) return { kind: 'flake', flake: opticsOf(flake) };
  if (constants === undefined) return undefined;
  if (kind === 'plastic') return { kind: 'plastic', constants };
  if (tier === 'measured' && doubt) return { kind: 'known', constants, doubt };
  return typical === undefined ? undefined : { kind: colouringKind(thing), typical };
}

/** What of a flake light meets; the rest of its file teaches nothing. */
function opticsOf({ shape, sizeMm, filmMm, density, reflectance, transmittance }: Flake): Flake {
  return { shape, sizeMm, reflectance: Array.from(reflectance), ...defined({ filmMm, density, transmittance }) };
}

/** How a material acts on light, as far as its file says: what tints clear plastic does so as a dye. */
function colouringKind({ fields }: Thing<MaterialKind>): Exclude<Prior['kind'], 'known' | 'plastic' | 'flake'> {
  const kind = 'look' in fields && fields.look && 'kind' in fields.look ? fields.look.kind : undefined;
  switch (kind) {
    case 'dye':
    case 'clear':
      return 'dye';
    case 'pigment':
    case 'pearl':
    case 'white':
      return kind;
    default:
      return 'unknown';
  }
}
