import { html } from '../html.ts';
import type { MethodPart } from './method-part.ts';

/** What each part of the computation rests on, as the code cites it. */
const SOURCES: readonly (readonly [what: string, source: string])[] = [
  [
    'Light in a layer',
    'P. Kubelka & F. Munk, Z. tech. Phys. 12:593 (1931); P. Kubelka, J. Opt. Soc. Am. 38:448 (1948)',
  ],
  ['Layers on top of each other', 'P. Kubelka, J. Opt. Soc. Am. 44:330 (1954)'],
  ['Mixing', 'D. R. Duncan, Proc. Phys. Soc. 52:390 (1940)'],
  [
    'The surface',
    'J. L. Saunderson, J. Opt. Soc. Am. 32:727 (1942); in water Fresnel’s equations, their mean over diffuse light after J. W. T. Walsh (1926) and S. Q. Duntley, J. Opt. Soc. Am. 32:61 (1942) (both from memory)',
  ],
  ['Flake turned at random', 'A. Cauchy (1832/1850): the mean shadow of a convex body is a quarter of its surface'],
  ['Hiding', 'the idea of ISO 6504-3: light over black by light over white'],
  ['Matching with K and S', 'E. Allen, J. Opt. Soc. Am. 64:991 (1974)'],
  [
    'A spectrum from three numbers',
    'S. A. Burns, Numerical methods for smooth and realistic reflectance reconstruction, Color Res. Appl. 45:8 (2020)',
  ],
  ['The eye', 'CIE 1931 observer (2°), CIE 015 and ISO/CIE 11664-1'],
  ['Lights', 'CIE 015 and ISO/CIE 11664-2: D65, A, FL11; CIE 015:2018: LED-B1'],
  ['Getting used to a light', 'K. M. Lam, thesis, University of Bradford (1985), as printed in ICC.1:2022, annex E'],
  ['Colour as numbers', 'CIELAB: ISO/CIE 11664-4'],
  ['Colour difference', 'CIEDE2000: ISO/CIE 11664-6; G. Sharma, W. Wu & E. N. Dalal, Color Res. Appl. 30:21 (2005)'],
  ['Colours on a screen', 'sRGB: IEC 61966-2-1:1999; colours a screen can’t show are brought closer as in CSS Color 4'],
  [
    'Water',
    'N. G. Jerlov, Marine Optics, 2nd ed., Elsevier 1976, table XXVII; its stain: A. Bricaud, A. Morel & L. Prieur, Limnol. Oceanogr. 26:43 (1981) (from memory) with the figures of L. Sipelgas et al., Hydrology Research 34:361 (2003)',
  ],
];

export function sourcesPart(): MethodPart {
  return {
    id: 'sources',
    title: 'Sources',
    content: html`<dl class="sources">${SOURCES.map(([what, source]) => html`<div><dt>${what}</dt><dd>${source}</dd></div>`)}</dl>`,
  };
}
