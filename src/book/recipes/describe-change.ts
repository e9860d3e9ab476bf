import { type Amounts, amountOf } from '../../cup/ledger.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import type { Appearance, Lab } from '../model/colours.ts';
import type { Change } from '../model/cup.ts';

const chroma = ({ a, b }: Lab): number => Math.hypot(a, b);

/**
 * What changed from one colour to the next: numbers, words, and every dose.
 *
 * ΔL, ΔC and ΔH are CIELAB differences over white; the ΔE00 is the larger of those over white and over black.
 * Units: doses come in g per ml of plastic and go out in g per 100 ml.
 */
export function describeChange(
  from: { look: Appearance; contents: Amounts },
  to: { look: Appearance; contents: Amounts },
): Change {
  const before = from.look.overWhite.lab;
  const after = to.look.overWhite.lab;
  const deltaL = after.L - before.L;
  const deltaC = chroma(after) - chroma(before);
  const alongHue = (after.a - before.a) ** 2 + (after.b - before.b) ** 2 - deltaC ** 2;
  const turn = Math.sign(before.a * after.b - before.b * after.a);
  const deltaContrast = to.look.contrastRatio - from.look.contrastRatio;
  const names = [...new Set([...Object.keys(from.contents), ...Object.keys(to.contents)])].sort();
  return {
    deltaE: Math.max(deltaE00(before, after), deltaE00(from.look.overBlack.lab, to.look.overBlack.lab)),
    deltaL,
    deltaC,
    deltaH: turn * Math.sqrt(Math.max(0, alongHue)),
    deltaContrast,
    words: changeWords(before, after, deltaContrast),
    doses: names
      .map((material) => ({
        material,
        from: amountOf(from.contents, material) * 100,
        to: amountOf(to.contents, material) * 100,
      }))
      .filter((dose) => Math.abs(dose.to - dose.from) > 1e-9 * Math.max(dose.from, dose.to)),
  };
}

// A difference of one unit of lightness or chroma is just seen side by side; three hundredths of contrast ratio likewise.
const SEEN = 1;
const SEEN_CONTRAST = 0.03;

/** The trade's words for a change, the largest first: "darker, browner, denser". Empty where nothing is to be seen. */
export function changeWords(before: Lab, after: Lab, deltaContrast: number): readonly string[] {
  const da = after.a - before.a;
  const db = after.b - before.b;
  const dL = after.L - before.L;
  const dC = chroma(after) - chroma(before);
  const words: [size: number, word: string][] = [];
  if (Math.abs(dL) >= SEEN) words.push([Math.abs(dL), dL < 0 ? 'darker' : 'lighter']);
  const side = Math.hypot(da, db);
  if (side >= SEEN) {
    const fades = dC < -0.8 * side;
    words.push([side, fades ? 'greyer' : towards(da, db, after)]);
  }
  if (Math.abs(deltaContrast) >= SEEN_CONTRAST) {
    words.push([Math.abs(deltaContrast) * 30, deltaContrast > 0 ? 'denser' : 'clearer']);
  }
  return words.sort(([one], [other]) => other - one).map(([, word]) => word);
}

function towards(da: number, db: number, after: Lab): string {
  if (da > 0.4 * Math.abs(db) && db > 0.4 * da && after.L < 55) return 'browner';
  if (Math.abs(da) > Math.abs(db)) return da > 0 ? 'redder' : 'greener';
  return db > 0 ? 'yellower' : 'bluer';
}
