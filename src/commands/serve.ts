/** Serves a folder of built pages to this machine only. */
import { existsSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import sirv from 'sirv';

const HOST = '127.0.0.1';
/** How many ports beyond the wanted one are tried: enough for a row of forgotten servers. */
const TRIES = 50;

export interface Serving {
  address: string;
  close(): Promise<void>;
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, HOST, () => {
      server.off('error', reject);
      resolve((server.address() as AddressInfo).port);
    });
  });
}

const isTaken = (error: unknown) =>
  error instanceof Error && 'code' in error && (error.code === 'EADDRINUSE' || error.code === 'EACCES');

/** Serves `folder` at `port`, or at the next free one after it; port 0 takes any free port. */
export async function serve(folder: string, port: number): Promise<Serving> {
  const files = sirv(folder, { etag: true });
  const server = createServer((request, response) => {
    const { pathname, search } = new URL(request.url ?? '/', 'http://localhost');
    // A folder's first page names its files from within the folder, so its address has to end in a slash.
    if (!pathname.endsWith('/') && existsSync(join(folder, pathname, 'index.html')))
      response.writeHead(308, { location: `${pathname}/${search}` }).end();
    else
      files(request, response, () => {
        response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('No such page\n');
      });
  });
  const last = Math.min(port + TRIES, 65_535);
  for (let next = port; ; next += 1) {
    try {
      const taken = await listen(server, next);
      return {
        address: `http://${HOST}:${taken}`,
        close: () =>
          new Promise((resolve) => {
            server.close(() => resolve());
            server.closeAllConnections();
          }),
      };
    } catch (error) {
      if (!isTaken(error) || next >= last) throw error;
    }
  }
}
