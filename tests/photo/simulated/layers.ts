/**
 * What a bait is made of: layers that throw light back and let it through, band by band, over any backing.
 *
 * @packageDocumentation
 */
import { absorptionOf, type Spectrum, scatteringOf } from '../../measure/foreign/physics/spectra.ts';
import type { Chance } from '../../measure/foreign/world/chance.ts';
import { type MeasuredFilm, measuredFilms } from './reference-spectra.ts';

/** A plastic, by what a layer of it, so many units thick, is over a backing. */
export interface Plastic {
  readonly name: string;
  over(backing: Spectrum, thickness: number): Spectrum;
}

/** A plastic like one of the measured films (whose thickness is the unit), or like an invented one with a dye or two. */
export function somePlastic(chance: Chance): Plastic {
  const films = measuredFilms();
  return films.length > 0 && chance.uniform() < 0.8 ? likeFilm(chance.oneOf(films)) : dyedPlastic(chance);
}

/** All plastics that are like measured films. */
export function filmPlastics(): readonly Plastic[] {
  return measuredFilms().map(likeFilm);
}

function likeFilm(film: MeasuredFilm): Plastic {
  const layers = Array.from(film.onBlack, (_, band) => layerOf(film, band));
  return {
    name: film.name,
    over: (backing, thickness) => backing.map((under, band) => overBacking(grown(layers[band]!, thickness), under)),
  };
}

/** A clear base with one to three dyes or pigments in it; the unit is 2 mm. */
function dyedPlastic(chance: Chance): Plastic {
  const K = absorptionOf(
    Array.from({ length: 1 + Math.floor(3 * chance.uniform()) }, () => ({
      kind: 'band' as const,
      at: 410 + 260 * chance.uniform(),
      width: 20 + 35 * chance.uniform(),
      height: 2.5 * chance.uniform() ** 2,
    })),
  ).map((each) => each + 0.01);
  const S = scatteringOf(0.03 + 1.2 * chance.uniform() ** 2, 0.5 + chance.uniform());
  return {
    name: 'invented',
    over: (backing, thickness) =>
      backing.map((under, band) => overBacking(twoFlux(K[band]!, S[band]!, thickness), under)),
  };
}

/** A layer in one band: what it throws back over nothing, and what it lets through. */
interface Layer {
  readonly reflects: number;
  readonly passes: number;
}

/** Of a film on its two cards, by turns until both agree with what was measured. */
function layerOf({ onBlack, onWhite, bareBlack, bareWhite }: MeasuredFilm, band: number): Layer {
  const [dark, light] = [onBlack[band]!, onWhite[band]!];
  const [black, white] = [bareBlack[band]!, bareWhite[band]!];
  let [reflects, squared] = [dark, 0];
  for (let round = 0; round < 60; round++) {
    squared = Math.max(1e-6, ((light - reflects) * (1 - reflects * white)) / white);
    reflects = Math.max(1e-3, dark - (squared * black) / (1 - reflects * black));
  }
  // No layer gives back more than it gets.
  return { reflects, passes: Math.min(Math.sqrt(squared), 0.995 - reflects) };
}

/** The layer so many times as thick: two fluxes (Kubelka 1948), by the two of the layer once. */
function grown({ reflects, passes }: Layer, times: number): Layer {
  const a = Math.max(1 + 1e-9, (1 + reflects ** 2 - passes ** 2) / (2 * reflects));
  const b = Math.sqrt(a * a - 1);
  const depth = Math.asinh((b * reflects) / passes) * times;
  return bySinh(a, b, depth);
}

/** A layer of a plastic with K and S, by the same two fluxes. */
function twoFlux(K: number, S: number, thickness: number): Layer {
  const a = 1 + K / S;
  const b = Math.sqrt(a * a - 1);
  return bySinh(a, b, b * S * thickness);
}

function bySinh(a: number, b: number, depth: number): Layer {
  // Beyond this nothing passes, and sinh would have no end.
  const bounded = Math.min(depth, 40);
  const [sinh, cosh] = [Math.sinh(bounded), Math.cosh(bounded)];
  const all = a * sinh + b * cosh;
  return { reflects: sinh / all, passes: b / all };
}

function overBacking({ reflects, passes }: Layer, backing: number): number {
  return reflects + (passes * passes * backing) / (1 - reflects * backing);
}
