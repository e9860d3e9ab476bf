/** A moment's day as files write it, `2026-03-14`, in the time zone of the machine. */
export function dayOf(now: Date): string {
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
