import { randomBytes } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { everyHeader, mayWrite, type Refusal, refuse } from './guard.ts';
import { listPage, type PageFile, pageWithToken } from './page-files.ts';
import { PlanFolder } from './plan-folder.ts';
import { watchFiles } from './watch.ts';

export interface PreviewOptions {
  /** Folder of the built page. */
  readonly page: string;
  /** Plan file; without one the page offers presets. */
  readonly plan?: string;
  /** Folder the plan's files may lie in; the plan's own if left out. */
  readonly root?: string;
  /** Files outside that folder that may be read as well, as real paths: see `mastersOutside`. */
  readonly also?: readonly string[];
  /** 0 or left out: any free port. */
  readonly port?: number;
}

export interface Preview {
  readonly url: string;
  /** The word that lets the page write; new in each run. */
  readonly token: string;
  /** Ends open connections too. */
  close(): Promise<void>;
}

/** Largest body taken: a mesh that a person dropped. A plan may have far less. */
const largestBody = 256 * 2 ** 20;
const largestPlanBody = 250_000;

/** Serves one plan and the page that shows it, on the loopback address only. Throws what `listen` throws. */
export async function startPreview({ page, plan, root, also, port = 0 }: PreviewOptions): Promise<Preview> {
  const token = randomBytes(24).toString('base64url');
  const folder = plan === undefined ? undefined : await PlanFolder.open(plan, root, also);
  const desk = new Desk(await listPage(page), token, folder);
  const server = createServer((request, response) => void desk.answer(request, response));
  server.requestTimeout = 60_000;
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  desk.port = (server.address() as AddressInfo).port;
  const stops = folder
    ? [
        watchFiles(
          () => folder.watched(),
          () => desk.tell('change'),
        ),
        watchFiles(
          () => Promise.resolve([folder.logPath]),
          () => desk.tell('trials'),
        ),
      ]
    : [];
  return {
    url: `http://127.0.0.1:${desk.port}/`,
    token,
    close: () => {
      for (const stop of stops) stop();
      return new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      });
    },
  };
}

/** Answers requests. */
class Desk {
  port = 0;
  private readonly listeners = new Set<ServerResponse>();

  constructor(
    private readonly page: ReadonlyMap<string, PageFile>,
    private readonly token: string,
    private readonly folder: PlanFolder | undefined,
  ) {}

  /** That the plan or a file it names is another, or the log of its trials. */
  tell(what: 'change' | 'trials'): void {
    for (const response of this.listeners) response.write(`event: ${what}\ndata: \n\n`);
  }

  async answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    for (const [name, value] of Object.entries(everyHeader)) response.setHeader(name, value);
    try {
      const refusal = refuse(request, this.port) ?? (await this.route(request, response));
      if (refusal) say(response, refusal);
    } catch {
      // What exactly failed (a path, a system's word) is not for the other end.
      if (!response.headersSent) say(response, { status: 500, says: 'that could not be done' });
      else response.end();
    }
  }

  private async route(request: IncomingMessage, response: ServerResponse): Promise<Refusal | undefined> {
    const [path, query = ''] = (request.url ?? '').split('?', 2);
    const given = new URLSearchParams(query).get('path') ?? '';
    switch (`${request.method} ${path}`) {
      case 'GET /plan':
        return this.sendPlan(response);
      case 'GET /plan/file':
        return this.sendFile(given, response);
      case 'GET /plan/changes':
        return this.follow(request, response);
      case 'PUT /plan':
        return this.save(request, response);
      case 'GET /trials':
        return this.sendLog(response);
      case 'PUT /trials':
        return this.saveLog(request, response);
      case 'PUT /plan/file':
        return this.add(given, request, response);
      default:
        return this.sendPage(request, path, response);
    }
  }

  private async sendPage(
    { method }: IncomingMessage,
    path: string,
    response: ServerResponse,
  ): Promise<Refusal | undefined> {
    if (method !== 'GET' && method !== 'HEAD') return { status: 405, says: 'this is not done here' };
    const file = this.page.get(path === '/' ? '/index.html' : path);
    if (!file) return notThere;
    response.setHeader('content-type', file.type);
    const isPage = file.type.startsWith('text/html');
    const body = isPage ? await pageWithToken(file.path, this.token) : await readFile(file.path);
    response.end(method === 'HEAD' ? undefined : body);
    return undefined;
  }

  private async sendPlan(response: ServerResponse): Promise<Refusal | undefined> {
    // Started without a plan: no fault, there is just none.
    if (this.folder) sendJson(response, 200, await this.folder.state());
    else response.writeHead(204).end();
    return undefined;
  }

  private async sendFile(path: string, response: ServerResponse): Promise<Refusal | undefined> {
    if (!this.folder) return notThere;
    const found = await this.folder.file(path);
    if (!(found instanceof Uint8Array)) return found;
    response.setHeader('content-type', 'application/octet-stream');
    response.end(found);
    return undefined;
  }

  private follow(request: IncomingMessage, response: ServerResponse): Refusal | undefined {
    if (!this.folder) return notThere;
    response.writeHead(200, { 'content-type': 'text/event-stream' });
    response.write(': open\n\n');
    this.listeners.add(response);
    request.on('close', () => this.listeners.delete(response));
    return undefined;
  }

  private async save(request: IncomingMessage, response: ServerResponse): Promise<Refusal | undefined> {
    if (!this.folder) return notThere;
    if (!mayWrite(request, this.token)) return notAllowed;
    const body = await bodyOf(request, largestPlanBody);
    if (!body) return tooLarge;
    const expected = request.headers['if-match'];
    if (expected === undefined)
      return { status: 428, says: 'say which plan this takes the place of (If-Match)' };
    const { saved, now } = await this.folder.save(body, expected);
    sendJson(response, saved ? 200 : 409, now);
    return undefined;
  }

  private async sendLog(response: ServerResponse): Promise<Refusal | undefined> {
    if (!this.folder) return notThere;
    sendJson(response, 200, await this.folder.log());
    return undefined;
  }

  /** Takes the place of the log that was read (If-Match), or is the first one (If-None-Match: *). */
  private async saveLog(request: IncomingMessage, response: ServerResponse): Promise<Refusal | undefined> {
    if (!this.folder) return notThere;
    if (!mayWrite(request, this.token)) return notAllowed;
    const body = await bodyOf(request, largestPlanBody);
    if (!body) return tooLarge;
    const expected = request.headers['if-match'];
    if (expected === undefined && request.headers['if-none-match'] !== '*')
      return { status: 428, says: 'say which log this takes the place of (If-Match, or If-None-Match: *)' };
    const { saved, now } = await this.folder.saveLog(body, expected);
    sendJson(response, saved ? 200 : 409, now);
    return undefined;
  }

  private async add(
    name: string,
    request: IncomingMessage,
    response: ServerResponse,
  ): Promise<Refusal | undefined> {
    if (!this.folder) return notThere;
    if (!mayWrite(request, this.token)) return notAllowed;
    const body = await bodyOf(request, largestBody);
    if (!body) return tooLarge;
    const refusal = await this.folder.add(name, body);
    if (!refusal) response.writeHead(201).end();
    return refusal;
  }
}

const notThere: Refusal = { status: 404, says: 'there is nothing here' };
const notAllowed: Refusal = { status: 403, says: 'only the page of this run may write' };
const tooLarge: Refusal = { status: 413, says: 'that is larger than is taken here' };

function say(response: ServerResponse, { status, says }: Refusal): void {
  // A body that was not read to its end must not be taken for the next request.
  response.setHeader('connection', 'close');
  response.writeHead(status, { 'content-type': 'text/plain; charset=utf-8' }).end(says);
}

function sendJson(response: ServerResponse, status: number, data: unknown): void {
  response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(data));
}

/** The request's body, or nothing where it is longer than `most` bytes, whatever its header says. */
async function bodyOf(request: IncomingMessage, most: number): Promise<Uint8Array | undefined> {
  if (Number(request.headers['content-length'] ?? 0) > most) return undefined;
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    size += part.length;
    if (size > most) return undefined;
    parts.push(part);
  }
  return new Uint8Array(Buffer.concat(parts));
}
