/** A browser of another make, with what the journeys of the site need of it. */
export interface Engine {
  /** Goes to an address, in a profile that knows nothing, and waits until it is loaded. */
  open(address: string): Promise<void>;
  /** Waits for what a selector finds to be seen, and clicks it. */
  click(selector: string): Promise<void>;
  /** Puts a text in the place of what is in a field, key by key, and presses Enter. */
  type(selector: string, text: string): Promise<void>;
  /** What can be read of the first that a selector finds. */
  text(selector: string): Promise<string>;
  /** How many of what a selector finds are seen. */
  seen(selector: string): Promise<number>;
  /** What scripts threw since the page was opened, as far as the engine tells. */
  errors(): readonly string[];
  close(): Promise<void>;
}

/** An engine that this machine may have. */
export interface EngineKind {
  readonly name: string;
  /** Why it can't be started here; undefined where it can. */
  readonly missing: string | undefined;
  start(): Promise<Engine>;
}

/** How many of what a selector finds are seen; runs in the page. */
export function countSeen(selector: string): number {
  return [...document.querySelectorAll<HTMLElement>(selector)].filter((each) => each.checkVisibility()).length;
}
