import { once } from 'node:events';
import { type AddressInfo, createServer } from 'node:net';

/** A port that nobody listens on, on any address of this machine. */
export async function freePort(): Promise<number> {
  const probe = createServer().listen(0);
  await once(probe, 'listening');
  const { port } = probe.address() as AddressInfo;
  await new Promise((done) => probe.close(done));
  return port;
}
