/**
 * How plastisol is handled at the bench. From memory, common practice, no source: the supplier's data sheet comes first.
 *
 * @packageDocumentation
 */

/** How long a jug stands after it was shaken, minutes. */
export const STANDING_MIN = { from: 30, to: 60 } as const;

/** A vacuum in its place: inches of mercury below the air's pressure, minutes, and how full the container is at most. */
export const VACUUM = { inHg: { from: 25, to: 29 }, minutes: { from: 5, to: 15 }, full: '1/3' } as const;

/** How salt is dried: °C and hours. */
export const DRYING = { celsius: { from: 100, to: 120 }, hours: { from: 1, to: 2 } } as const;

/** How warm a mold is before the first shot, °C. */
export const MOLD_WARM = { from: 35, to: 60 } as const;

/** Most that two cups may differ that are shot together, °C, and from the heat to the shot, s. */
export const SHOT_TOGETHER = { apart: 5, seconds: { from: 60, to: 120 } } as const;

/** Until what sinks is noticed, s: large flake, from so many mm across on, and salt. The finest flake stays where it is. */
export const SETTLING = { largeFlakeMm: 0.5, flake: { from: 30, to: 60 }, salt: { from: 60, to: 60 } } as const;

/** Shots of a cold mold that come out dull or short. */
export const FIRST_SHOTS = 2;
