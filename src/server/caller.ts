import type { IncomingHttpHeaders } from 'node:http';
import { isIP } from 'node:net';
import { isLoopback, plainAddress } from './loopback.ts';
import type { NearAddresses } from './near-addresses.ts';

/** Who asks: somebody at this machine, or somebody in the same network. */
export type Caller = 'here' | 'network';

/** Why nobody is let in, for the person who reads it. */
export interface TurnedAway {
  readonly status: 400 | 403;
  readonly why: string;
}

/** What a request says of where it comes from. */
export interface Asked {
  /** Address of the other end of the connection. */
  readonly peer: string | undefined;
  readonly headers: IncomingHttpHeaders;
}

/** What a program adds that passes on what others ask. */
const PASSED_ON = ['forwarded', 'via', 'x-forwarded-for', 'x-forwarded-host', 'x-real-ip'] as const;

/**
 * Decides who asks, and whether they may at all.
 *
 * - The name that is asked for must be this machine's: else a page from elsewhere could have its own name lead here, and
 *   read the book as if it were its own (DNS rebinding).
 * - A page from elsewhere may lead a person here by a link, but may load nothing from here into itself.
 * - What a tunnel or proxy passes on counts as the network, though it arrives from this machine.
 *
 * @param near the networks that may ask; undefined where only this machine may
 */
export function callerOf({ peer, headers }: Asked, near: NearAddresses | undefined): Caller | TurnedAway {
  const address = plainAddress(peer ?? '');
  const host = hostName(headers.host);
  if (isIP(address) === 0 || host === undefined) {
    return { status: 400, why: 'The request does not say which host it asks.' };
  }
  const own = host === 'localhost' || isLoopback(host);
  const known = own || near?.names.includes(host) === true;
  if (!known) return { status: 403, why: 'This book is not shown under that name.' };
  if (isOfOtherPage(headers) && !isLink(headers)) return { status: 403, why: 'Another page may not load this book.' };
  if (own && isLoopback(address) && PASSED_ON.every((name) => headers[name] === undefined)) return 'here';
  if (near === undefined) return { status: 403, why: 'This book is only shown on the computer that it is on.' };
  if (!isLoopback(address) && !near.isNear(address)) {
    return { status: 403, why: 'This book is only shown in the network that it is in.' };
  }
  return 'network';
}

/** Host of a `Host` field, without its port, an IPv6 address without its brackets; undefined where it is none. */
function hostName(field: string | undefined): string | undefined {
  if (field === undefined || !/^[\w.:[\]-]+$/.test(field) || !URL.canParse(`http://${field}/`)) return undefined;
  const { hostname } = new URL(`http://${field}/`);
  return hostname.replace(/^\[|\]$/g, '');
}

/** Whether a page of another origin makes its reader's browser ask; a browser says so of itself (Fetch Metadata). */
export function isOfOtherPage({ origin, host, 'sec-fetch-site': site }: IncomingHttpHeaders): boolean {
  if (origin !== undefined && origin.toLowerCase() !== `http://${host?.toLowerCase()}`) return true;
  return site !== undefined && site !== 'same-origin' && site !== 'none';
}

/** Whether the reader follows a link to see the answer as a page of its own. A form would send an origin. */
function isLink(headers: IncomingHttpHeaders): boolean {
  return (
    headers.origin === undefined && headers['sec-fetch-mode'] === 'navigate' && headers['sec-fetch-dest'] === 'document'
  );
}
