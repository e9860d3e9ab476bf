/** An injector of the bench. */
export interface Injector {
  readonly holdsMl: number;
  /** What can't be pushed out of it, ml. */
  readonly leftMl: number;
}

/** How often an injector is filled for the shots of a mold. */
export interface Fills {
  readonly mold: string;
  /** What a shot takes of the cup, ml. */
  readonly shotMl: number;
  /** 0 where the injector holds less than a shot. */
  readonly shotsAFill: number;
  readonly fills: number;
}

/**
 * How often an injector is filled from a cup, each time with what it holds above what stays in it.
 *
 * @param shots of the mold
 */
export function fillsOf(injector: Injector, mold: string, shotMl: number, shots: number): Fills {
  const shotsAFill = Math.floor((injector.holdsMl - injector.leftMl) / shotMl + 1e-9);
  return { mold, shotMl, shotsAFill, fills: shotsAFill === 0 ? 0 : Math.ceil(shots / shotsAFill) };
}
