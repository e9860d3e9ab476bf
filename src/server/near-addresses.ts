import { BlockList, isIPv6 } from 'node:net';
import { hostname, type NetworkInterfaceInfo, networkInterfaces } from 'node:os';

/** This machine in its networks, as it is now: a laptop moves from one to another. */
export interface NearAddresses {
  /** Addresses under which others reach this machine, the likeliest first. */
  readonly own: readonly string[];
  /** Names and addresses that others may call this machine by, small letters. */
  readonly names: readonly string[];
  /** Whether an address belongs to a network that this machine is in, or to one that is nowhere in the internet. */
  isNear(address: string): boolean;
}

/** Addresses that no router of the internet passes on: RFC 1918, RFC 3927, RFC 4193, RFC 4291 section 2.5.6. */
const PRIVATE = [
  ['10.0.0.0', 8, 'ipv4'],
  ['172.16.0.0', 12, 'ipv4'],
  ['192.168.0.0', 16, 'ipv4'],
  ['169.254.0.0', 16, 'ipv4'],
  ['fc00::', 7, 'ipv6'],
  ['fe80::', 10, 'ipv6'],
] as const;

/** Networks between programs of one machine (containers, virtual machines, tunnels), in which there is no phone. */
const NO_PHONE = /^(?:docker|br-|veth|virbr|vmnet|vboxnet|utun|tun|tap|wg|zt)|vEthernet|WSL|VirtualBox|VMware/i;

/** Looks at the machine's networks. */
export function nearAddresses(
  networks: Readonly<Record<string, readonly NetworkInterfaceInfo[] | undefined>> = networkInterfaces(),
  name: string = hostname(),
): NearAddresses {
  const near = new BlockList();
  for (const [address, bits, family] of PRIVATE) near.addSubnet(address, bits, family);
  const outward = Object.entries(networks).flatMap(([card, addresses = []]) =>
    addresses.filter(({ internal }) => !internal).map((address) => ({ ...address, card })),
  );
  for (const { address, cidr, family } of outward) {
    near.addSubnet(
      address,
      Number(cidr?.split('/')[1] ?? (family === 'IPv4' ? 32 : 128)),
      family === 'IPv4' ? 'ipv4' : 'ipv6',
    );
  }
  // A phone cannot use an IPv6 address of the link alone: its address would need the name of a network card.
  const usable = outward.filter(({ address }) => !/^fe[89ab]/i.test(address));
  const likely = (card: string, family: string): number => (NO_PHONE.test(card) ? 2 : 0) + (family === 'IPv4' ? 0 : 1);
  const own = usable.sort((a, b) => likely(a.card, a.family) - likely(b.card, b.family)).map(({ address }) => address);
  const short = name.toLowerCase().split('.')[0] ?? '';
  return {
    own,
    names: [
      ...own.map((address) => address.toLowerCase()),
      ...(short ? [name.toLowerCase(), short, `${short}.local`] : []),
    ],
    isNear: (address) => near.check(address, isIPv6(address) ? 'ipv6' : 'ipv4'),
  };
}
