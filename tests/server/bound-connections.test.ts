import { once } from 'node:events';
import { createServer, type RequestListener } from 'node:http';
import { type AddressInfo, connect, type Socket } from 'node:net';
import { networkInterfaces } from 'node:os';
import { expect, onTestFinished, test } from 'vitest';
import { boundConnections, type ConnectionBounds } from '../../src/server/bound-connections.ts';
import { oneAtATime } from '../../src/server/one-at-a-time.ts';
import { rawRequest, requestText } from './raw-request.ts';

const BOUNDS: ConnectionBounds = { here: 20, network: 6, address: 4, requestMs: 30_000, silentMs: 30_000 };

/** A bounded server, until the test is finished; returns its port. */
async function bounded(bounds: Partial<ConnectionBounds>, listener: RequestListener): Promise<number> {
  const server = createServer({ connectionsCheckingInterval: 20 }, listener);
  boundConnections({ ...BOUNDS, ...bounds })(server);
  server.listen(0, '0.0.0.0');
  await once(server, 'listening');
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  return (server.address() as AddressInfo).port;
}

/** Opens a connection that is destroyed when the test is finished. */
function opened(port: number, host = '127.0.0.1'): Socket {
  const socket = connect(port, host);
  socket.on('error', () => socket.destroy());
  onTestFinished(() => void socket.destroy());
  return socket;
}

const OUTWARD = Object.values(networkInterfaces())
  .flatMap((addresses) => addresses ?? [])
  .find(({ internal, family }) => !internal && family === 'IPv4')?.address;

test('boundConnections ends connections beyond so many, and takes others when those are gone', async () => {
  const port = await bounded({}, (_request, response) => response.end('here'));
  const sockets = Array.from({ length: 50 }, () => opened(port));
  await expect.poll(() => sockets.filter(({ closed }) => closed).length).toBe(30);
  expect((await rawRequest({ hostname: '127.0.0.1', port }, requestText('/'))).status).toBe(0);
  for (const socket of sockets) socket.destroy();
  await expect.poll(async () => (await rawRequest({ hostname: '127.0.0.1', port }, requestText('/'))).status).toBe(200);
});

test.skipIf(OUTWARD === undefined)(
  'boundConnections keeps room for this machine, whatever the network opens (needs a network card)',
  async () => {
    const port = await bounded({}, (_request, response) => response.end('here'));
    const sockets = Array.from({ length: 50 }, () => opened(port, OUTWARD));
    await expect.poll(() => sockets.filter(({ closed }) => closed).length).toBe(46);
    expect((await rawRequest({ hostname: '127.0.0.1', port }, requestText('/'))).status).toBe(200);
  },
);

test.each([
  ['nothing', ''],
  ['half a request line', 'GET / HT'],
  ['half its fields', 'GET / HTTP/1.1\r\nHost: localhost\r\nX-'],
])('boundConnections ends a connection that has sent %s for so long', async (_what, sent) => {
  const port = await bounded({ requestMs: 200, silentMs: 400 }, (_request, response) => response.end());
  const socket = opened(port);
  socket.write(sent);
  const trickle = setInterval(() => sent.endsWith('-') && socket.write('y'), 50);
  onTestFinished(() => clearInterval(trickle));
  socket.resume();
  await once(socket, 'close');
});

test('boundConnections ends a connection that does not read its answer', async () => {
  const port = await bounded({ silentMs: 300 }, (_request, response) => response.end(Buffer.alloc(64_000_000)));
  const socket = opened(port);
  socket.write(requestText('/'));
  await once(socket, 'readable');
  // Reads on only now: what the system had kept, then the end.
  await new Promise((done) => setTimeout(done, 1500));
  let bytes = 0;
  socket.on('data', (part) => {
    bytes += part.length;
  });
  await once(socket, 'close');
  expect(bytes).toBeLessThan(64_000_000);
});

test('oneAtATime answers what arrives at once one after the other', async () => {
  const begun: string[] = [];
  let now = 0;
  let most = 0;
  const port = await bounded(
    {},
    oneAtATime((request, response) => {
      begun.push(request.url ?? '');
      now += 1;
      most = Math.max(most, now);
      setTimeout(() => {
        now -= 1;
        response.end(`answer to ${request.url}\n`);
      }, 5);
    }),
  );
  const { text } = await rawRequest(
    { hostname: '127.0.0.1', port },
    ['/1', '/2', '/3', '/4']
      .map((url) => requestText(url, { connection: url === '/4' ? 'close' : 'keep-alive' }))
      .join(''),
  );
  expect(begun).toEqual(['/1', '/2', '/3', '/4']);
  expect(most).toBe(1);
  expect(text.match(/answer to \/\d/g)).toEqual(['/1', '/2', '/3', '/4'].map((url) => `answer to ${url}`));
});

test('oneAtATime ends a connection that asks far ahead, and begins nothing of what it has asked', async () => {
  let begun = 0;
  const port = await bounded(
    {},
    oneAtATime((_request, response) => {
      begun += 1;
      setTimeout(() => response.end('x'), 5);
    }),
  );
  const one = requestText('/', { connection: 'keep-alive' });
  const { text } = await rawRequest({ hostname: '127.0.0.1', port }, one.repeat(1000));
  expect(text).toBe('');
  await new Promise((done) => setTimeout(done, 100));
  expect(begun).toBe(1);
});
