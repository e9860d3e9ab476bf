/**
 * Arrays that are kept from picture to picture, since making them anew takes longer than drawing.
 *
 * A picture is finished before the next begins, so one set is enough; what must begin at 0 is asked for by `zeroes`.
 *
 * @packageDocumentation
 */
const kept = new Map<string, Float32Array>();

/** Numbers of any value, of a length; the same memory each time for a name. */
export function keptFloats(name: string, length: number): Float32Array {
  let whole = kept.get(name);
  if (whole === undefined || whole.length < length) {
    whole = new Float32Array(length);
    kept.set(name, whole);
  }
  return whole.length === length ? whole : whole.subarray(0, length);
}

/** `keptFloats`, each of them 0. */
export function zeroes(name: string, length: number): Float32Array {
  return keptFloats(name, length).fill(0);
}
