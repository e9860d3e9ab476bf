/**
 * What can be wrong with the two parts of a cut.
 *
 * @packageDocumentation
 */
import { nearestFileFix } from '../../diagnostics/nearest-name.ts';
import { KINDS } from '../../kinds/kinds.ts';
import type { CutThing } from '../read/is-cut.ts';
import type { Things } from '../read/read-things.ts';
import type { Finding } from '../report.ts';
import type { MaterialCore } from './compile-material.ts';

/** Why a name is no bottle that can be cut; none where its own file was told of. */
export function bottleFault(
  { id: own, fields: { cut } }: CutThing,
  shelf: ReadonlyMap<string, MaterialCore>,
  things: Things,
): Finding | undefined {
  const { of } = cut;
  const expected = `the name of a file in ${KINDS.colorant.folder}/`;
  const kind = shelf.get(of)?.kind;
  if (kind === 'colorant') return undefined;
  const other = things.cuts.get(of)?.fields.cut;
  if (other) {
    const straight = of !== own && things.materials.has(other.of);
    return {
      found: `\`${of}\`, which is a cut${of === own ? ' itself' : ''}`,
      expected: `${expected} that is no cut`,
      why: 'a cut is of the bottle, so that one line says how much of it there is',
      fix: straight
        ? `write \`of: ${other.of}\`, and \`one-in: ${cut['one-in'] * other['one-in']}\` if it is as weak as a cut of that cut`
        : 'write the name of the bottle',
    };
  }
  if (kind !== undefined)
    return {
      found: `${kind} \`${of}\``,
      expected,
      why:
        kind === 'powder' ? 'a powder sinks in its cut, and no two drops are the same' : 'only a liquid colour is cut',
      fix: kind === 'powder' ? 'weigh it, or write the name of a colorant' : 'write the name of a colorant',
    };
  return isFaulty(of, things) ? undefined : { found: `colorant \`${of}\``, expected, ...nearest(of, shelf, isBottle) };
}

/** Why nothing is cut with that. */
export function diluentFault(
  name: string,
  shelf: ReadonlyMap<string, MaterialCore>,
  things: Things,
): Finding | undefined {
  const material = shelf.get(name);
  if (material && isDiluent(material)) return undefined;
  const expected = 'the name of a plastic, or of a liquid additive such as softener';
  const found = material ? `${material.kind} \`${name}\`` : things.cuts.has(name) ? `\`${name}\`, which is a cut` : '';
  if (found !== '')
    return {
      found,
      expected,
      why: 'a colour is cut with what is clear, liquid and at home in the plastic',
      ...nearest('', shelf, isDiluent, 'write the name of your softener, or of a clear plastic'),
    };
  return isFaulty(name, things) ? undefined : { found: `\`${name}\``, expected, ...nearest(name, shelf, isDiluent) };
}

const isBottle = ({ kind }: MaterialCore): boolean => kind === 'colorant';
const isDiluent = ({ kind, gramsPerDrop }: MaterialCore): boolean =>
  kind === 'plastic' || (kind === 'additive' && gramsPerDrop !== undefined);

/** Whether a file of that name is there and cannot be used: that is told of there. */
function isFaulty(name: string, { materials, cuts, faulty }: Things): boolean {
  return materials.has(name) || cuts.has(name) || faulty.has('colorant', name);
}

/** The edit for a name: the nearest of those that can be meant, or the only one. */
function nearest(
  name: string,
  shelf: ReadonlyMap<string, MaterialCore>,
  isWanted: (material: MaterialCore) => boolean,
  otherwise = 'write the name of a file that is there',
): Pick<Finding, 'fix' | 'nearest'> {
  const names = [...shelf.values()].filter(isWanted).map(({ id }) => id);
  const [only] = names;
  if (name !== '') return nearestFileFix(name, names, otherwise);
  return only === undefined || names.length > 1 ? { fix: otherwise } : { fix: `write \`${only}\``, nearest: only };
}
