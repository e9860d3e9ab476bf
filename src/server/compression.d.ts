/** The part of `compression` that the server uses, for plain requests of Node; its own types are those of Express. */
declare module 'compression' {
  import type { IncomingMessage, ServerResponse } from 'node:http';

  type Handler = (request: IncomingMessage, response: ServerResponse, next: (error?: unknown) => void) => void;

  interface Compression {
    (options: { filter(request: IncomingMessage, response: ServerResponse): boolean }): Handler;
    /** Whether the content type of a response is one that becomes smaller. */
    filter(request: IncomingMessage, response: ServerResponse): boolean;
  }

  const compression: Compression;
  export default compression;
}
