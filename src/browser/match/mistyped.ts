/** What is wrong with something typed, and where. */
export interface Mistyped {
  readonly fault: string;
  readonly at: HTMLInputElement;
}

/** Whether something typed was none of what it should be. */
export function isMistyped(read: object): read is Mistyped {
  return 'fault' in read;
}
