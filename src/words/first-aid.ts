/**
 * What to do when something has gone wrong at the bench.
 *
 * Common practice, from memory, no source; a doctor, the fire service and the supplier's safety data sheet come before it.
 *
 * @packageDocumentation
 */

/** One thing that goes wrong, and what to do, first things first. */
export interface FirstAid {
  /** Where it stands on the page Care. */
  readonly id: string;
  readonly title: string;
  readonly steps: readonly string[];
}

export const FIRST_AID: readonly FirstAid[] = [
  {
    id: 'burn',
    title: 'Burn: hot plastic on skin',
    steps: [
      'Hold it under cool running water at once, for 20 minutes. No ice.',
      'Don’t pull the plastic off: the skin comes with it. Leave that to a doctor.',
      'Take off rings, watch and bracelets before the hand swells, unless they are stuck.',
      'Cover it loosely with something clean, such as cling film. No butter, no cream.',
      'See a doctor. Call an ambulance for a burn in the face or bigger than your palm, and for hot plastic in an eye: rinse that until help comes.',
    ],
  },
  {
    id: 'smoke',
    title: 'A cup that smokes, stings or turns brown',
    steps: [
      'Leave it where it is. Don’t carry it: you would spill it, and breathe it all the way.',
      'Switch the heat off if you can do it on your way out. Leave the microwave door shut.',
      'Everybody out, and shut the door behind you. Leave the hood or the fan on.',
      'Go back when the smoke is gone and the cup is cold.',
    ],
  },
  {
    id: 'fire',
    title: 'A cup that burns',
    steps: [
      'Never water: it throws the burning plastic about.',
      'If it is small and your way out is behind you: switch off, put a metal lid on it, or use the extinguisher (ABC powder or CO₂). Keep both by the door, never above the heat.',
      'If not: everybody out, shut the door, and call the fire service.',
    ],
  },
  {
    id: 'fumes',
    title: 'You breathed the fumes',
    steps: [
      'Get into fresh air, and sit down.',
      'A cough, a tight chest or short breath: call for medical help, and have the data sheet at hand.',
      'These may come hours later. Tell somebody, and don’t spend the night alone.',
    ],
  },
];

/** What somebody who was burnt must know at once, in one line. */
export const BURNT_LINE =
  'Burnt? Don’t pull the plastic off. Hold it under cool running water for 20 minutes, then see a doctor.';

/** What to do with a cup that was too hot, in one line. */
export const SMOKING_LINE = 'A cup that smokes stays where it is: switch off, get out, air the room.';
