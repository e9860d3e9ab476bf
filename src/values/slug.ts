/** Names that a file may have: they become ids and addresses. */
export const SLUG: RegExp = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;
