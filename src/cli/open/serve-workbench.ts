/**
 * Serves the built workbench, and the files that were named, to this computer alone: on its own address, by GET, nothing else on the
 * disk, and only to pages that ask for it by that address (another site's name that points here is refused).
 */
import { createReadStream, statSync } from 'node:fs';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';

export interface Served {
  readonly address: string;
  /** When the program is told to stop. */
  readonly ended: Promise<void>;
}

interface ServeOptions {
  readonly folder: string;
  /** 0 takes any free one. */
  readonly port: number;
  /** Paths by the names that the page asks for. */
  readonly files: ReadonlyMap<string, string>;
}

const HOST = '127.0.0.1';

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
};

export function serveWorkbench({ folder, port, files }: ServeOptions): Promise<Served> {
  const server = createServer((request, response) => answer(request, response, { folder, files }));
  return new Promise((resolve, reject) => {
    server.once('error', (error) => {
      // A port that is taken gives way to any free one.
      if ('code' in error && error.code === 'EADDRINUSE') server.listen(0, HOST);
      else reject(error);
    });
    server.once('listening', () => {
      const bound = server.address();
      const at = typeof bound === 'object' && bound !== null ? bound.port : port;
      const ended = new Promise<void>((end) => {
        for (const signal of ['SIGINT', 'SIGTERM'] as const) {
          process.once(signal, () => {
            server.closeAllConnections();
            server.close(() => end());
          });
        }
      });
      const query = [...files.keys()].map((name) => `open=${encodeURIComponent(name)}`).join('&');
      resolve({ address: `http://${HOST}:${at}/${query === '' ? '' : `?${query}`}`, ended });
    });
    server.listen(port, HOST);
  });
}

function answer(
  request: IncomingMessage,
  response: ServerResponse,
  { folder, files }: Pick<ServeOptions, 'folder' | 'files'>,
): void {
  const host = request.headers.host ?? '';
  const isOurs = /^(127\.0\.0\.1|localhost)(:\d+)?$/.test(host);
  const isAllowed = isOurs && request.method === 'GET';
  const path = isAllowed ? pathOf(request.url ?? '/', { folder, files }) : undefined;
  const size = path === undefined ? undefined : statSync(path, { throwIfNoEntry: false });
  if (path === undefined || size === undefined || !size.isFile()) {
    response.writeHead(isAllowed ? 404 : isOurs ? 405 : 403).end();
    return;
  }
  response.writeHead(200, {
    'content-type': TYPES[extname(path).toLowerCase()] ?? 'application/octet-stream',
    'content-length': size.size,
    'cache-control': 'no-cache',
    'x-content-type-options': 'nosniff',
  });
  createReadStream(path).pipe(response);
}

function pathOf(url: string, { folder, files }: Pick<ServeOptions, 'folder' | 'files'>): string | undefined {
  const asked = nameIn(url);
  if (asked === undefined) return undefined;
  const opened = /^\/opened\/(.+)$/.exec(asked)?.[1];
  if (opened !== undefined) return files.get(opened);
  const path = normalize(join(folder, asked === '/' ? 'index.html' : asked));
  return path.startsWith(folder + sep) ? path : undefined;
}

/** Without what follows `?`; undefined where it is no name. */
function nameIn(url: string): string | undefined {
  try {
    return decodeURIComponent(url.split('?')[0] ?? '/');
  } catch {
    return undefined;
  }
}
