/** A day as people write it: `14 March 2026`. Anything else stays as it is. */
export function dayText(date: string): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (!match) return date;
  const months = 'January February March April May June July August September October November December'.split(' ');
  return `${Number(match[3])} ${months[Number(match[2]) - 1] ?? match[2]} ${match[1]}`;
}
