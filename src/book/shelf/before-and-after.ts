import type { Lab } from '../../optics/cielab.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import { hexFromLab } from '../../optics/display.ts';
import { USUAL_OPTICS } from '../../optics/optical-model.ts';
import { LADDER_MM } from '../../tables/material-defaults.ts';
import { keptColour } from '../cups/appearances.ts';
import type { Appearance, Colour } from '../model/colours.ts';
import type { Constants, LadderStep, Material } from '../model/shelf.ts';
import type { Book } from '../model.ts';
import { aloneInClear, doseLadder, typicalLook } from './dose-ladder.ts';
import { DIFFERS } from './shown-alone.ts';

/** What is said of something before any look, and what is believed of it after. */
export interface BeforeAndAfter<T> {
  readonly said: T;
  readonly learned: T;
}

/** A material as its file has it, and as the book believes it to be. */
export interface MaterialBeliefs extends BeforeAndAfter<Pick<Appearance, 'overWhite' | 'overBlack'>> {
  /** Dose of the two, g/ml; absent of a plastic. */
  readonly gramsPerMl?: number;
  readonly thicknessMm: number;
  /** Between the two, ΔE00, the larger of over white and over black. */
  readonly deltaE: number;
  /** Whether the two, or any step of the ladders, are visibly unlike. */
  readonly differs: boolean;
  readonly ladders: BeforeAndAfter<readonly LadderStep[]>;
}

/**
 * What a book believed of a material by its file alone, and believes now: at the dose and the thickness that the file has a colour of (of
 * several, the nearest to its typical dose), else as on its ladder. What the file does not say of that, as over black of one colour over
 * white, is what its kind makes of it. Undefined of flake, and of what does not colour.
 */
export function beforeAndAfter(
  material: Material,
  { learned, optics }: Pick<Book, 'learned' | 'optics'>,
): MaterialBeliefs | undefined {
  const { id, label, typical, flake } = material;
  if (label === undefined || flake !== undefined) return undefined;
  const asLabelled: Labelled = { ...material, constants: label };
  const ladders = { said: doseLadder(asLabelled, USUAL_OPTICS), learned: doseLadder(material, optics) };
  const labels = learned.data.materials.find((each) => each.id === id)?.labels ?? [];
  const [stated] = [...labels].sort((one, other) => farFrom(one.dose, typical) - farFrom(other.dose, typical));
  const thicknessMm = stated?.thicknessMm ?? LADDER_MM;
  const gramsPerMl = stated?.dose ?? typical;
  const shown = gramsPerMl === undefined ? plasticAlone(asLabelled, material, optics) : undefined;
  if (gramsPerMl === undefined && shown === undefined) return undefined;
  const modelled = shown?.said ?? aloneInClear(asLabelled, gramsPerMl!, USUAL_OPTICS, thicknessMm);
  const said = {
    overWhite: ofLabel(stated?.overWhite) ?? modelled.overWhite,
    overBlack: ofLabel(stated?.overBlack) ?? modelled.overBlack,
  };
  const after = shown?.learned ?? aloneInClear(material, gramsPerMl!, optics, thicknessMm);
  const deltaE = apart(said, after);
  return {
    said,
    learned: after,
    ...(gramsPerMl === undefined ? {} : { gramsPerMl }),
    thicknessMm,
    deltaE,
    differs:
      deltaE >= DIFFERS || ladders.said.some(({ look }, step) => apart(look, ladders.learned[step]!.look) >= DIFFERS),
    ladders,
  };
}

type Labelled = Material & { readonly constants: Constants };

function plasticAlone(
  asLabelled: Labelled,
  material: Material,
  optics: Book['optics'],
): BeforeAndAfter<Appearance> | undefined {
  const [said, learned] = [typicalLook(asLabelled, USUAL_OPTICS), typicalLook(material, optics)];
  return said && learned && { said, learned };
}

function farFrom(dose: number, typical = dose): number {
  return Math.abs(Math.log(dose / typical));
}

function ofLabel(lab: Lab | undefined): Colour | undefined {
  return lab && keptColour({ lab, ...hexFromLab(lab) });
}

type Views = Pick<Appearance, 'overWhite' | 'overBlack'>;

function apart(one: Views, other: Views): number {
  return Math.max(deltaE00(one.overWhite.lab, other.overWhite.lab), deltaE00(one.overBlack.lab, other.overBlack.lab));
}
