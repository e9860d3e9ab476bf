import type { TabChannel } from './kept-match.ts';

/** The tabs of a book in this browser; a browser without such channels leaves it to the numbers of the changes. */
export function tabChannel(book: string): TabChannel {
  if (!('BroadcastChannel' in window)) return { tell: () => {}, listen: () => {} };
  const channel = new BroadcastChannel(`cupbook-bench ${book}`);
  return {
    tell: (revision) => channel.postMessage(revision),
    listen: (heard) => {
      channel.onmessage = ({ data }: MessageEvent<unknown>) => {
        // A tab that nobody sees looks when it is seen again.
        if (typeof data === 'number' && document.visibilityState === 'visible') heard(data);
      };
    },
  };
}
