/** Whether what a browser has kept is still what it would get (RFC 9110, section 13). */
declare module 'fresh' {
  import type { IncomingHttpHeaders } from 'node:http';

  export default function fresh(request: IncomingHttpHeaders, response: Readonly<Record<string, string>>): boolean;
}
