import type { OpticalMaterial } from '../../optics/cup-body.ts';
import { type OpticalModel, USUAL_OPTICS } from '../../optics/optical-model.ts';
import type { Material } from '../model/shelf.ts';

/**
 * The shelf as its files have it. Matching learns from the rounds of the cup that it is asked of, beginning here; had those rounds taught
 * the shelf before, they would count twice.
 */
export function labelledShelf<M extends OpticalMaterial & Pick<Material, 'label'>>(
  materials: readonly M[],
): readonly M[] {
  return materials.map((material) => {
    const { label } = material;
    if (label === undefined) return material;
    const known = labelled.get(material);
    if (known !== undefined) return known as M;
    const asLabelled = { ...material, constants: label };
    labelled.set(material, asLabelled);
    return asLabelled;
  });
}

/** By what labels are read, and so colours of them computed. */
export const LABEL_OPTICS: OpticalModel = USUAL_OPTICS;

/** What matching begins with, of a book. */
export function asLabelled<B extends { readonly materials: readonly Material[]; readonly optics: OpticalModel }>(
  book: B,
): B {
  return { ...book, materials: labelledShelf(book.materials), optics: LABEL_OPTICS };
}

// A material never changes, and whoever remembers what was computed from one asks for the same again.
const labelled = new WeakMap<object, object>();
