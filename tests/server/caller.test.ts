import type { NetworkInterfaceInfo } from 'node:os';
import { expect, test } from 'vitest';
import { callerOf } from '../../src/server/caller.ts';
import { nearAddresses } from '../../src/server/near-addresses.ts';

const card = (
  address: string,
  cidr: string,
  family: 'IPv4' | 'IPv6' = 'IPv4',
  internal = false,
): NetworkInterfaceInfo =>
  ({ address, cidr, family, internal, mac: '00:00:00:00:00:00', netmask: '', scopeid: 0 }) as NetworkInterfaceInfo;

const NEAR = nearAddresses(
  {
    lo: [card('127.0.0.1', '127.0.0.1/8', 'IPv4', true)],
    docker0: [card('172.17.0.1', '172.17.0.1/16')],
    wlan0: [
      card('fe80::1', 'fe80::1/64', 'IPv6'),
      card('2001:db8::5', '2001:db8::5/64', 'IPv6'),
      card('192.168.1.5', '192.168.1.5/24'),
    ],
    eth0: [card('198.51.100.7', '198.51.100.7/28')],
  },
  'Bench.home.example',
);

test('nearAddresses names first the address that a phone is likeliest to reach', () => {
  expect(NEAR.own).toEqual(['192.168.1.5', '198.51.100.7', '2001:db8::5', '172.17.0.1']);
  expect(NEAR.names).toEqual([...NEAR.own, 'bench.home.example', 'bench', 'bench.local']);
  expect(nearAddresses({}, '')).toMatchObject({ own: [], names: [] });
});

test.each([
  ['192.168.1.77', true],
  ['10.3.2.1', true],
  ['198.51.100.14', true],
  ['198.51.100.17', false],
  ['8.8.8.8', false],
  ['fd12::1', true],
  ['2001:db8::9', true],
  ['2001:db8:1::9', false],
])('nearAddresses: whether %s is in a network of this machine is %s', (address, near) => {
  expect(NEAR.isNear(address)).toBe(near);
});

/** Who asks, or the status of who is turned away. */
const who = (peer: string, headers: Readonly<Record<string, string>>, near: typeof NEAR | undefined = NEAR) => {
  const caller = callerOf({ peer, headers }, near);
  return typeof caller === 'string' ? caller : caller.status;
};

test.each([
  ['127.0.0.1', 'localhost:8080', 'here'],
  ['127.0.0.1', 'LOCALHOST:8080', 'here'],
  ['127.0.0.1', '127.0.0.1:8080', 'here'],
  ['127.9.9.9', '127.9.9.9', 'here'],
  ['::1', '[::1]:8080', 'here'],
  ['::ffff:127.0.0.1', 'localhost:9000', 'here'],
  // A tunnel from elsewhere to this machine.
  ['127.0.0.1', '192.168.1.5:8080', 'network'],
  ['192.168.1.77', '192.168.1.5:8080', 'network'],
  ['192.168.1.77', 'bench.local:8080', 'network'],
  ['192.168.1.77', 'Bench:8080', 'network'],
  ['192.168.1.77', 'localhost:8080', 'network'],
  ['::ffff:192.168.1.77', '192.168.1.5', 'network'],
  ['fe80::2%wlan0', 'bench.local', 'network'],
  ['8.8.8.8', '198.51.100.7:8080', 403],
  ['8.8.8.8', 'localhost:8080', 403],
  ['127.0.0.1', 'attacker.example', 403],
  ['127.0.0.1', 'localhost.attacker.example:8080', 403],
  ['127.0.0.1', '0.0.0.0:8080', 403],
  ['192.168.1.77', 'attacker.example:8080', 403],
  ['192.168.1.77', '192.168.1.6:8080', 403],
  ['127.0.0.1', '', 400],
  ['127.0.0.1', 'a@localhost', 400],
  ['127.0.0.1', 'localhost/x', 400],
  ['127.0.0.1', 'localhost:99999', 400],
  ['', 'localhost', 400],
])('callerOf takes %s that asks for %j as %s', (peer, host, expected) => {
  expect(who(peer, { host })).toBe(expected);
});

test('callerOf turns away a request without a host', () => {
  expect(who('127.0.0.1', {})).toBe(400);
});

test('callerOf lets nobody in from the network unless it may', () => {
  expect(callerOf({ peer: '127.0.0.1', headers: { host: 'localhost' } }, undefined)).toBe('here');
  expect(callerOf({ peer: '192.168.1.77', headers: { host: 'localhost' } }, undefined)).toMatchObject({ status: 403 });
  expect(callerOf({ peer: '127.0.0.1', headers: { host: '192.168.1.5' } }, undefined)).toMatchObject({ status: 403 });
});

test.each(['forwarded', 'via', 'x-forwarded-for', 'x-forwarded-host', 'x-real-ip'])(
  'callerOf takes what a tunnel passes on (%s) as the network, though it comes from this machine',
  (header) => {
    expect(who('127.0.0.1', { host: 'localhost', [header]: 'x' })).toBe('network');
    expect(callerOf({ peer: '::1', headers: { host: 'localhost', [header]: 'x' } }, undefined)).toMatchObject({
      status: 403,
    });
  },
);

const FOLLOWED = { 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'document' };

test.each([
  ['its own script', { 'sec-fetch-site': 'same-origin', 'sec-fetch-mode': 'cors' }, 'here'],
  ['its own form or module', { origin: 'http://localhost:8080', 'sec-fetch-site': 'same-origin' }, 'here'],
  ['a typed address', { 'sec-fetch-site': 'none', ...FOLLOWED }, 'here'],
  ['a link of another page', { 'sec-fetch-site': 'cross-site', ...FOLLOWED }, 'here'],
  ['a picture in another page', { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'no-cors' }, 403],
  ['a page on another port', { 'sec-fetch-site': 'same-site', 'sec-fetch-mode': 'no-cors' }, 403],
  ['a frame of another page', { 'sec-fetch-site': 'cross-site', ...FOLLOWED, 'sec-fetch-dest': 'iframe' }, 403],
  ['a script of another page', { origin: 'http://evil.example' }, 403],
  ['a script of another port', { origin: 'http://localhost:3000' }, 403],
  ['a script of another scheme', { origin: 'https://localhost:8080' }, 403],
  ['a page without an origin', { origin: 'null' }, 403],
  ['a form of another page', { origin: 'http://evil.example', 'sec-fetch-site': 'cross-site', ...FOLLOWED }, 403],
] as const)('callerOf takes %s as it should', (_what, headers, expected) => {
  expect(who('127.0.0.1', { host: 'localhost:8080', ...headers })).toBe(expected);
});
