import { createServer } from 'node:http';
import { createServer as createListener } from 'node:net';
import { expect, onTestFinished, test } from 'vitest';
import { listen } from '../../src/server/listen.ts';
import { freePort } from '../free-port.ts';
import { HAS_IPV6 } from './served-site.ts';

/** Listens until the test is finished. */
async function listening(...[addresses, ports]: [Parameters<typeof listen>[1], Parameters<typeof listen>[2]]) {
  const { port, servers } = await listen(() => createServer(), addresses, ports);
  onTestFinished(() => servers.forEach((server) => void server.close()));
  return { port, addresses: servers.map((server) => server.address()) };
}

/** Another program on a port. */
async function taken(port: number): Promise<void> {
  const other = createListener();
  onTestFinished(() => void other.close());
  await new Promise<void>((done) => other.listen(port, '127.0.0.1', done));
}

test('listen leaves out a second address that this machine does not have', async () => {
  // 203.0.113.0/24 is kept for documentation (RFC 5737).
  const { port, addresses } = await listening(['127.0.0.1', '203.0.113.1'], { defaultPort: await freePort() });
  expect(addresses).toMatchObject([{ address: '127.0.0.1', port }]);
});

test('listen throws what the system says of its first address', async () => {
  await expect(listening(['203.0.113.1'], { defaultPort: await freePort() })).rejects.toThrow('EADDRNOTAVAIL');
});

test('listen takes the next port that is free on all addresses', async () => {
  const port = await freePort();
  await taken(port);
  const found = await listening(['127.0.0.1'], { defaultPort: port });
  expect(found.port).toBeGreaterThan(port);
  expect(found.port).toBeLessThan(port + 100);
});

test.skipIf(!HAS_IPV6)('listen lets go of the first address where the second is taken (needs IPv6)', async () => {
  const port = await freePort();
  await taken(port);
  await expect(listening(['::1', '127.0.0.1'], { port, defaultPort: port })).rejects.toThrow(
    `Port ${port} is already used`,
  );
  await listening(['::1'], { port, defaultPort: port });
});
