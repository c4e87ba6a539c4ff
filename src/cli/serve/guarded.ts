import { timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

/** Who may ask: nobody who does not know the token, and no page but the one that is served. */
export interface Guard {
  readonly token: string;
  /** `127.0.0.1:41234` */
  readonly host: string;
}

const sameText = (a: string, b: string): boolean => {
  const [left, right] = [Buffer.from(a), Buffer.from(b)];
  return left.length === right.length && timingSafeEqual(left, right);
};

/** What is asked for behind the token; undefined where the request is refused. */
export function asked(request: IncomingMessage, { token, host }: Guard): URL | undefined {
  const { headers, method, url: target = '' } = request;
  const origin = `http://${host}`;
  // A name that leads here from elsewhere, as a page of another server would use, is not this host.
  if (headers.host !== host) return undefined;
  if (headers.origin !== undefined && headers.origin !== origin) return undefined;
  // A browser says where every change comes from.
  if (method !== 'GET' && headers.origin !== origin) return undefined;
  const site = headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return undefined;
  if (!target.startsWith('/') || target.startsWith('//')) return undefined;
  const [, given = '', ...rest] = target.split('/');
  if (!sameText(given, token) || rest.length === 0) return undefined;
  try {
    return new URL(`/${rest.join('/')}`, origin);
  } catch {
    return undefined;
  }
}
