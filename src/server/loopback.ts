import { BlockList, isIP, isIPv6 } from 'node:net';

/** RFC 1122, section 3.2.1.3, and RFC 4291, section 2.5.3. */
const LOOPBACK = new BlockList();
LOOPBACK.addSubnet('127.0.0.0', 8, 'ipv4');
LOOPBACK.addAddress('::1', 'ipv6');

/** Whether an address is this machine's own, which no other machine reaches. */
export function isLoopback(address: string): boolean {
  return isIP(address) !== 0 && LOOPBACK.check(address, isIPv6(address) ? 'ipv6' : 'ipv4');
}

/** An address of a connection as the world writes it: no IPv4 address within an IPv6 one, no name of a network card. */
export function plainAddress(address: string): string {
  return address.replace(/^::ffff:(?=\d+\.)/i, '').replace(/%.*$/, '');
}
