/** What is wrong with a question, so that there is no answer to it. */
export type MatchFault =
  /** The cup holds, or is to hold, what is not on the shelf. */
  | { readonly kind: 'not-on-shelf'; readonly material: string }
  /** An amount in the cup is no number. */
  | { readonly kind: 'no-amount' }
  /** There is no plastic in the cup: all was poured, or nothing was put in. */
  | { readonly kind: 'empty-cup' }
  | { readonly kind: 'no-tolerance' }
  /** Nothing was seen of it, or nothing in a view that the target has. */
  | { readonly kind: 'not-seen' }
  | { readonly kind: 'no-thickness' }
  | { readonly kind: 'no-colour'; readonly over: 'white' | 'black' }
  /** It is lighter over black than over white. */
  | { readonly kind: 'reversed' }
  | { readonly kind: 'no-parts' }
  | { readonly kind: 'too-many-parts' }
  | { readonly kind: 'no-plastic'; readonly plastic: string }
  | { readonly kind: 'no-volume' }
  /** More plastic is asked for than a cup of the book is filled to. */
  | { readonly kind: 'too-full'; readonly roomMl: number }
  | { readonly kind: 'number-of-materials'; readonly most: number }
  /** The material to be replaced is not in the cup. */
  | { readonly kind: 'not-in-cup'; readonly title: string }
  /** The material to be replaced is the plastic of the cup. */
  | { readonly kind: 'is-plastic'; readonly title: string }
  /** The material to be replaced does not colour. */
  | { readonly kind: 'not-colouring'; readonly title: string };
