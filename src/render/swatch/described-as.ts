import { type Html, html } from '../html.ts';

/** Attributes of a drawing that is a picture with a name, or that says nothing beside its words. */
export function describedAs(label: string): Html {
  return label === '' ? html` aria-hidden="true"` : html` role="img" aria-label="${label}"`;
}
