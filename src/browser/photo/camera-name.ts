/**
 * The name of the camera, asked once and remembered on the device: what it does to all of its photos is learned under that.
 *
 * @packageDocumentation
 */
import { USUAL_CAMERA } from '../../photo/usual-camera.ts';

const KEPT_AS = 'cupbook-camera';

/** As many characters as a maker's own name for a phone takes; more would not stay on a line of a file. */
export const LONGEST_NAME = 40;

/** What it is called: as it was said last, or the usual. */
export function cameraName(): string {
  try {
    return settledName(localStorage.getItem(KEPT_AS) ?? '');
  } catch {
    // A browser that keeps nothing asks each time.
    return USUAL_CAMERA;
  }
}

/** Remembers what a maker calls it. */
export function rememberCamera(typed: string): void {
  try {
    localStorage.setItem(KEPT_AS, settledName(typed));
  } catch {
    // It is then named anew on the next visit.
  }
}

function settledName(typed: string): string {
  const name = typed.replace(/\s+/g, ' ').trim().slice(0, LONGEST_NAME);
  return name === '' ? USUAL_CAMERA : name;
}
