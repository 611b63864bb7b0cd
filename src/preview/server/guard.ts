import { timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

/** An answer that refuses, with a sentence a person can use. */
export interface Refusal {
  readonly status: number;
  readonly says: string;
}

/**
 * What every request must bring: a Host that is this server's own loopback address (a name that another site made
 * point here is not), and an Origin, where the browser says one, that is this server's own.
 */
export function refuse(request: IncomingMessage, port: number): Refusal | undefined {
  const own = [`127.0.0.1:${port}`, `localhost:${port}`];
  const { host, origin } = request.headers;
  if (host === undefined || !own.includes(host))
    return { status: 421, says: 'this server answers to its own name only' };
  if (origin !== undefined && !own.some((name) => origin === `http://${name}`)) {
    return { status: 403, says: 'requests of other pages are refused' };
  }
  if (request.headers['sec-fetch-site'] === 'cross-site') {
    return { status: 403, says: 'requests of other pages are refused' };
  }
  return undefined;
}

/** Whether the request knows the word this run gave to its own page. Compared in constant time. */
export function mayWrite(request: IncomingMessage, token: string): boolean {
  const given = request.headers['x-write-token'];
  if (typeof given !== 'string' || given.length !== token.length) return false;
  return timingSafeEqual(Buffer.from(given), Buffer.from(token));
}

/** The page may load from this server only; WASM may run, text may not be run as code, nobody may frame it. */
const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

export const everyHeader: Readonly<Record<string, string>> = {
  'content-security-policy': contentSecurityPolicy,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-resource-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
  'cache-control': 'no-store',
};
