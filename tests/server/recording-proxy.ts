import { once } from 'node:events';
import { type AddressInfo, connect, createServer } from 'node:net';
import { onTestFinished } from 'vitest';

/** A wire that can be listened to. */
export interface RecordingProxy {
  readonly port: number;
  /** All that was sent to the server, in the order in which it came. */
  sent(): string;
  /** All that the server sent. */
  received(): string;
}

/** Passes on what is sent to a port of an address to another port of it, and records it, until the test is finished. */
export async function recordingProxy(hostname: string, to: number): Promise<RecordingProxy> {
  const sent: Buffer[] = [];
  const received: Buffer[] = [];
  const proxy = createServer((outer) => {
    const inner = connect(to, hostname);
    for (const [from, into, record] of [
      [outer, inner, sent],
      [inner, outer, received],
    ] as const) {
      from.on('data', (part) => record.push(part));
      from.on('error', () => into.destroy());
      from.on('close', () => into.destroy());
      from.pipe(into);
    }
  });
  proxy.listen(0, hostname);
  await once(proxy, 'listening');
  onTestFinished(() => void proxy.close());
  return {
    port: (proxy.address() as AddressInfo).port,
    sent: () => Buffer.concat(sent).toString('latin1'),
    received: () => Buffer.concat(received).toString('latin1'),
  };
}
