import { once } from 'node:events';
import type { Server } from 'node:http';
import { Refusal } from '../diagnostics/refusal.ts';

/** Servers that listen on one port. */
export interface Listening {
  readonly port: number;
  readonly servers: readonly Server[];
}

/** Ports that are tried after the first. */
const TRIED = 100;

/**
 * Listens on the same port of several addresses: on the one that is asked for, else on the next free one from a first.
 *
 * Refuses a port that is taken or not allowed. An address that this machine does not have (`::1` where IPv6 is switched
 * off) is left out, but for the first.
 *
 * @param server makes one server
 */
export async function listen(
  server: () => Server,
  addresses: readonly [string, ...string[]],
  { port, defaultPort }: { readonly port?: number; readonly defaultPort: number },
): Promise<Listening> {
  if (port !== undefined) {
    const servers = await listenOn(server, addresses, port);
    if (servers === 'EACCES') {
      throw new Refusal(`This system lets no program of yours use port ${port}. Name another one, from 1024 on.`);
    }
    if (servers !== 'EADDRINUSE') return { port, servers };
    throw new Refusal(
      `Port ${port} is already used by another program, perhaps by another start of this one. Stop that, name another port, or leave --port out for the next free one.`,
    );
  }
  for (let next = defaultPort; next < defaultPort + TRIED && next <= 65_535; next++) {
    const servers = await listenOn(server, addresses, next);
    if (typeof servers !== 'string') return { port: next, servers };
  }
  throw new Refusal(`The ports from ${defaultPort} on are all used by other programs. Name a free one with --port.`);
}

/** Why not, where the port is taken on one of the addresses, or kept by the system. */
async function listenOn(
  server: () => Server,
  addresses: readonly string[],
  port: number,
): Promise<readonly Server[] | 'EADDRINUSE' | 'EACCES'> {
  const servers: Server[] = [];
  for (const [index, address] of addresses.entries()) {
    const one = server();
    try {
      one.listen({ port, host: address });
      await once(one, 'listening');
      servers.push(one);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (index > 0 && (code === 'EADDRNOTAVAIL' || code === 'EAFNOSUPPORT' || code === 'EINVAL')) continue;
      for (const open of servers) open.close();
      if (code === 'EADDRINUSE' || code === 'EACCES') return code;
      throw error;
    }
  }
  return servers;
}
