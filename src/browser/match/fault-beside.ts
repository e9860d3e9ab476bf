/** Id of what is wrong with a field: one is told of at a time. */
export const FAULT = 'match-fault';

/** Shows what is wrong with a field below it, and ties the two together; false where the field is not to be seen. */
export function showFault(fault: string, at: HTMLElement): boolean {
  const around = at.closest('.field, .match-colour, .match-side, [data-round]') ?? at.parentElement;
  if (around === null || at.offsetParent === null) return false;
  const beside = document.createElement('span');
  beside.className = FAULT;
  beside.id = FAULT;
  beside.textContent = fault;
  if (around.matches('.field')) around.append(beside);
  else at.after(beside);
  at.setAttribute('aria-describedby', FAULT);
  return true;
}

/** Takes what was wrong with a field away again. */
export function clearFault(beside: Element): void {
  const at = beside.ownerDocument.querySelector(`[aria-describedby="${FAULT}"]`);
  at?.removeAttribute('aria-describedby');
  beside.remove();
}
