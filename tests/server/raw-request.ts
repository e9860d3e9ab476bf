import { connect } from 'node:net';

/** What came back over a connection. */
export interface RawAnswer {
  /** 0 where nothing came. */
  readonly status: number;
  /** Small letters. */
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string;
  /** All of it. */
  readonly text: string;
}

/**
 * Sends bytes as they are, and returns what came back when the connection has ended or the time is over.
 *
 * @param ends whether nothing more is to come, so that the other side may end as well
 */
export async function rawRequest(
  { hostname, port }: { readonly hostname: string; readonly port: string | number },
  bytes: string | Uint8Array,
  { milliseconds = 5000, ends = false }: { readonly milliseconds?: number; readonly ends?: boolean } = {},
): Promise<RawAnswer> {
  const socket = connect(Number(port), hostname);
  const parts: Buffer[] = [];
  socket.on('data', (part) => parts.push(part));
  socket.on('error', () => socket.destroy());
  if (ends) socket.end(bytes);
  else socket.write(bytes);
  const over = setTimeout(() => socket.destroy(), milliseconds);
  await new Promise((closed) => socket.once('close', closed));
  clearTimeout(over);
  const text = Buffer.concat(parts)
    .toString('latin1')
    .replace(/^HTTP\/1\.1 100 Continue\r\n\r\n/, '');
  const [head = '', ...rest] = text.split('\r\n\r\n');
  const [first = '', ...fields] = head.split('\r\n');
  return {
    status: Number(/^HTTP\/1\.1 (\d{3})/.exec(first)?.[1] ?? 0),
    headers: Object.fromEntries(
      fields.map((field) => {
        const colon = field.indexOf(':');
        return [field.slice(0, colon).toLowerCase(), field.slice(colon + 1).trim()];
      }),
    ),
    body: rest.join('\r\n\r\n'),
    text,
  };
}

/** A request as text; the connection ends with its answer. */
export function requestText(
  target: string,
  { method = 'GET', ...headers }: Readonly<Record<string, string>> = {},
): string {
  const fields = Object.entries({ host: 'localhost', connection: 'close', ...headers });
  return `${method} ${target} HTTP/1.1\r\n${fields.map(([name, value]) => `${name}: ${value}\r\n`).join('')}\r\n`;
}
