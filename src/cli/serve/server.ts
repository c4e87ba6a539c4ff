import { randomBytes } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { filesIn, Refused, read, save, saveOutputs } from './folder.ts';
import { asked, type Guard } from './guarded.ts';

export interface Served {
  /** With the token: whoever has it may read and save in the folder. */
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** Bytes that a request may bring. */
const MOST_BODY = 300 * 1024 * 1024;

const HEADERS = {
  'cache-control': 'no-store',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'cross-origin-resource-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
};

/** Serves the page and one folder to this machine alone, on a port that is free. */
export async function serve(folder: string, html: (base: string) => Promise<string>): Promise<Served> {
  const token = randomBytes(24).toString('base64url');
  let guard: Guard | undefined;
  const page = await html(`/${token}/`);
  const server = createServer((request, response) => {
    answer(request, response, { folder, page, guard }).catch((problem: unknown) => tell(response, problem));
  });
  server.headersTimeout = 10_000;
  server.requestTimeout = 120_000;
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => resolve());
  });
  const { port } = server.address() as AddressInfo;
  guard = { token, host: `127.0.0.1:${port}` };
  return {
    address: `http://${guard.host}/${token}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

interface Site {
  readonly folder: string;
  readonly page: string;
  readonly guard: Guard | undefined;
}

async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  { folder, page, guard }: Site,
): Promise<void> {
  const url = guard === undefined ? undefined : asked(request, guard);
  if (url === undefined) return send(response, 403, 'text/plain', 'refused');
  const name = url.searchParams.get('name') ?? '';
  switch (`${request.method} ${url.pathname}`) {
    case 'GET /':
      return send(response, 200, 'text/html; charset=utf-8', page);
    case 'GET /files':
      return json(response, { files: filesIn(folder) });
    case 'GET /file': {
      const { bytes, mark } = read(folder, name);
      response.setHeader('etag', `"${mark}"`);
      return send(response, 200, 'application/octet-stream', bytes);
    }
    case 'PUT /file': {
      const over = /^"([0-9a-f]{64})"$/u.exec(request.headers['if-match'] ?? '')?.[1];
      if (over === undefined && request.headers['if-none-match'] !== '*')
        throw new Refused(400, 'say which text is saved over, or that there is none');
      return json(response, { mark: await save(folder, name, await body(request), over) });
    }
    case 'POST /outputs': {
      await saveOutputs(folder, name, outputsOf(await body(request)));
      return json(response, {});
    }
    default:
      return send(response, 404, 'text/plain', 'there is nothing of that name');
  }
}

async function body(request: IncomingMessage): Promise<Uint8Array> {
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of request) {
    length += (part as Buffer).length;
    if (length > MOST_BODY) throw new Refused(413, 'that is more than is taken');
    parts.push(part as Buffer);
  }
  return Buffer.concat(parts);
}

function outputsOf(bytes: Uint8Array): readonly { readonly name: string; readonly bytes: Uint8Array }[] {
  let read: unknown;
  try {
    read = JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    read = undefined;
  }
  if (!Array.isArray(read)) throw new Refused(400, 'a list of files is wanted');
  return read.map((each: unknown) => {
    const { name, base64 } = (each ?? {}) as { readonly name?: unknown; readonly base64?: unknown };
    if (typeof name !== 'string' || typeof base64 !== 'string') throw new Refused(400, 'a file has a name and bytes');
    return { name, bytes: Buffer.from(base64, 'base64') };
  });
}

const json = (response: ServerResponse, value: unknown): void =>
  send(response, 200, 'application/json', JSON.stringify(value));

function send(response: ServerResponse, status: number, type: string, content: string | Uint8Array): void {
  response.writeHead(status, { ...HEADERS, 'content-type': type });
  response.end(content);
}

function tell(response: ServerResponse, problem: unknown): void {
  if (response.headersSent) {
    response.destroy();
    return;
  }
  const message = problem instanceof Error ? problem.message : String(problem);
  send(response, problem instanceof Refused ? problem.status : 500, 'text/plain; charset=utf-8', message);
}
