import { execFileSync } from 'node:child_process';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { type RequestOptions, request } from 'node:http';
import { connect, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { mastersOutside, type Preview, startPreview } from '../../src/preview/server/index.ts';
import { run } from '../cli/workbench.ts';

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

const plan = `# a comment that must stay
process: rigid
disc: { diameter: 100, thickness: 12 }
masters:
  leaf: { file: masters/leaf.stl }
  far: { file: ../outside.stl }
  linked: { file: masters/linked.stl }
  gone: { file: masters/gone.stl }
placements: []
`;

const home = mkdtempSync(join(tmpdir(), 'preview-'));
const at = (...names: string[]): string => join(home, ...names);
let preview: Preview;
let port = 0;

/** Sends just what it is told to: no path made straight, no header added. */
function ask(path: string, options: RequestOptions = {}, body?: string | Buffer): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port, path, ...options }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: Buffer.concat(parts).toString('utf8'),
        }),
      );
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

const planNow = async () => JSON.parse((await ask('/plan')).body) as { text: string; hash: string };
const put = (path: string, headers: Record<string, string>, body: string | Buffer): Promise<Answer> =>
  ask(path, { method: 'PUT', headers }, body);
const file = (path: string): Promise<Answer> => ask(`/plan/file?path=${encodeURIComponent(path)}`);

beforeAll(async () => {
  mkdirSync(at('page/assets'), { recursive: true });
  mkdirSync(at('shop/masters'), { recursive: true });
  writeFileSync(at('page/index.html'), '<head><meta charset="utf-8" /></head>the page');
  writeFileSync(at('page/assets/a.js'), 'code');
  writeFileSync(at('secret.txt'), 'secret');
  writeFileSync(at('outside.stl'), 'secret');
  writeFileSync(at('shop/plan.yaml'), plan);
  writeFileSync(at('shop/masters/leaf.stl'), 'leaf');
  writeFileSync(at('shop/masters/other.stl'), 'not in the plan');
  symlinkSync(at('secret.txt'), at('shop/masters/linked.stl'));
  preview = await startPreview({ page: at('page'), plan: at('shop/plan.yaml') });
  port = Number(new URL(preview.url).port);
});

afterAll(async () => {
  await preview.close();
  rmSync(home, { recursive: true, force: true });
});

describe('what is served', () => {
  it.runIf(process.platform === 'linux')('is no pipe and no file that the system makes up', async () => {
    const folder = at('odd');
    mkdirSync(folder);
    execFileSync('mkfifo', [join(folder, 'pipe.stl')]);
    symlinkSync('/proc/self/maps', join(folder, 'made-up.stl'));
    const names = ['pipe', 'made-up'];
    const masters = names.map((name) => `  ${name}: { file: ${name}.stl }\n`).join('');
    writeFileSync(
      join(folder, 'plan.yaml'),
      `process: rubber\ndisc: { diameter: 150 }\nmasters:\n${masters}`,
    );
    const odd = await startPreview({ page: at('page'), plan: join(folder, 'plan.yaml'), root: '/' });
    const said = await Promise.all(
      names.map(async (name) => (await fetch(`${odd.url}plan/file?path=${name}.stl`)).text()),
    );
    await odd.close();
    expect(said[0]).toBe('pipe.stl is a pipe, not a file');
    expect(said[1]).toMatch(/^made-up.stl holds more than its size tells/);
  });

  it('is the page with this run’s word, the plan, and its masters', async () => {
    const page = await ask('/');
    expect(page.status).toBe(200);
    expect(page.body).toContain(`<meta name="write-token" content="${preview.token}" />`);
    expect((await ask('/assets/a.js')).body).toBe('code');
    expect((await planNow()).text).toBe(plan);
    expect((await file('masters/leaf.stl')).body).toBe('leaf');
  });

  it('is the page alone where there is no plan', async () => {
    const bare = await startPreview({ page: at('page') });
    const answers = await Promise.all(
      ['plan', 'plan/file?path=a.stl', 'plan/changes'].map(
        async (path) => (await fetch(bare.url + path)).status,
      ),
    );
    expect(answers).toEqual([204, 404, 404]);
    await bare.close();
  });

  it('comes with a policy that lets nothing remote in and nobody frame it', async () => {
    const { headers } = await ask('/');
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toMatch(/https?:|\*|unsafe-inline|unsafe-eval(?<!wasm-unsafe-eval)/);
    expect(headers['x-content-type-options']).toBe('nosniff');
  });

  it('is bound to loopback: another address of this machine finds nobody', async () => {
    const { networkInterfaces } = await import('node:os');
    const others = Object.values(networkInterfaces())
      .flat()
      .filter((one) => one && !one.internal && one.family === 'IPv4');
    for (const other of others) {
      const met = await new Promise((resolve) => {
        const socket = connect({ host: other?.address, port }, () => resolve('met'));
        socket.on('error', () => resolve('nobody'));
        socket.on('connect', () => socket.destroy());
      });
      expect(met).toBe('nobody');
    }
  });
});

describe('attacks on reading', () => {
  it.each([
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/%2e%2e/secret.txt',
    '/assets/%2e%2e%2f%2e%2e%2fsecret.txt',
    '/..%5csecret.txt',
    '//secret.txt',
    '/assets/',
    '/assets',
    '/index.html/..',
    '/plan.yaml',
  ])('%s is nothing: no walking out, no listing', async (path) => {
    const { status, body } = await ask(path);
    expect(status).toBe(404);
    expect(body).not.toContain('secret');
  });

  it.each(['../secret.txt', '/etc/passwd', 'masters/other.stl', 'plan.yaml', '', 'masters/leaf.stl\0'])(
    'the file %j is not named by the plan and not given',
    async (path) => expect((await file(path)).status).toBe(403),
  );

  it.each(['../outside.stl', 'masters/linked.stl'])(
    '%s is named by the plan but lies, or leads, outside its folder',
    async (path) => {
      const { status, body } = await file(path);
      expect(status).toBe(403);
      expect(body).toContain('--root');
      expect(body).not.toContain('secret');
    },
  );

  it('a named file that is not there is 404, in words', async () => {
    expect(await file('masters/gone.stl')).toMatchObject({
      status: 404,
      body: 'there is no file masters/gone.stl',
    });
  });

  it.each(['evil.example', `evil.example:80`, '127.0.0.1', 'localhost:1', '[::1]'])(
    'a Host of %s, as a rebound name would send, is refused',
    async (host) => expect((await ask('/plan', { headers: { host } })).status).toBe(421),
  );

  it.each(['http://evil.example', 'null', 'https://127.0.0.1', 'http://localhost:1'])(
    'an Origin of %s is refused',
    async (origin) => expect((await ask('/plan', { headers: { origin } })).status).toBe(403),
  );

  it('a request the browser says comes from another site is refused', async () => {
    expect((await ask('/plan', { headers: { 'sec-fetch-site': 'cross-site' } })).status).toBe(403);
  });

  it.each(['POST', 'DELETE', 'OPTIONS', 'PATCH', 'TRACE'])('%s is not done', async (method) => {
    expect((await ask('/plan', { method })).status).toBe(405);
  });
});

describe('attacks on writing', () => {
  it.each([[{}], [{ 'x-write-token': 'x' }], [{ 'x-write-token': 'x'.repeat(32) }]])(
    'without this run’s word nothing is written: %j',
    async (headers) => {
      const { hash } = await planNow();
      expect((await put('/plan', { 'if-match': hash, ...headers }, 'x')).status).toBe(403);
      expect((await put('/plan/file?path=new.stl', headers, 'x')).status).toBe(403);
      expect((await planNow()).text).toBe(plan);
    },
  );

  it('a plan larger than any is refused, whether its size is told or not', async () => {
    const { hash } = await planNow();
    const headers = { 'x-write-token': preview.token, 'if-match': hash };
    const large = Buffer.alloc(300_000, 'x');
    expect((await put('/plan', { ...headers, 'content-length': '300000' }, large)).status).toBe(413);
    expect((await put('/plan', { ...headers, 'transfer-encoding': 'chunked' }, large)).status).toBe(413);
    expect((await planNow()).text).toBe(plan);
  });

  it.each(['../x.stl', 'masters/x.stl', 'plan.yaml', '.x.stl', 'x.html', 'x.stl/', 'C:x.stl', 'a\0.stl', ''])(
    'the new file %j is no plain name of a mesh and is refused',
    async (name) => {
      const path = `/plan/file?path=${encodeURIComponent(name)}`;
      expect((await put(path, { 'x-write-token': preview.token }, 'x')).status).toBe(400);
    },
  );

  it('a new mesh is put into the masters’ folder, once; the same again is as good as written', async () => {
    const headers = { 'x-write-token': preview.token };
    expect((await put('/plan/file?path=snail.stl', headers, 'first')).status).toBe(201);
    expect((await put('/plan/file?path=snail.stl', headers, 'first')).status).toBe(201);
    const other = await put('/plan/file?path=snail.stl', headers, 'other');
    expect(other).toMatchObject({ status: 409, body: expect.stringContaining('another masters/snail.stl') });
    expect(readFileSync(at('shop/masters/snail.stl'), 'utf8')).toBe('first');
    expect(readdirSync(at('shop'))).toEqual(['masters', 'plan.yaml']);
  });

  it('a mesh larger than any is refused before it is read', async () => {
    const headers = { 'x-write-token': preview.token, 'content-length': String(257 * 2 ** 20) };
    expect((await put('/plan/file?path=large.stl', headers, '')).status).toBe(413);
    expect(readdirSync(at('shop/masters'))).not.toContain('large.stl');
  });

  it('a masters’ folder that leads elsewhere is not written to, nor is a link in it', async () => {
    mkdirSync(at('bench'));
    mkdirSync(at('elsewhere'));
    writeFileSync(at('bench/plan.yaml'), plan);
    symlinkSync(at('elsewhere'), at('bench/masters'));
    const bench = await startPreview({ page: at('page'), plan: at('bench/plan.yaml') });
    const sent = await fetch(`${bench.url}plan/file?path=x.stl`, {
      method: 'PUT',
      headers: { 'x-write-token': bench.token },
      body: 'x',
    });
    await bench.close();
    expect(sent.status).toBe(403);
    expect(readdirSync(at('elsewhere'))).toEqual([]);
    // A link of that name is taken for the file it is: neither followed nor written over.
    const linked = await put('/plan/file?path=linked.stl', { 'x-write-token': preview.token }, 'x');
    expect(linked.status).toBe(409);
    expect(readFileSync(at('secret.txt'), 'utf8')).toBe('secret');
  });
});

describe('masters outside the plan’s folder', () => {
  it('are found where the plan says so itself: no link, no other kind of file, none that is not there', async () => {
    mkdirSync(at('other'));
    symlinkSync(at('secret.txt'), at('other/link.stl'));
    symlinkSync(at('shop/masters'), at('other/folder'));
    const paths = [
      '../outside.stl',
      '../secret.txt',
      '../other/link.stl',
      '../other/folder/leaf.stl',
      '../none.stl',
    ];
    const masters = paths.map((path, i) => `  m${i}: { file: ${path} }\n`).join('');
    const text = plan.replace(/(?<=masters:\n)[\s\S]*(?=placements)/, masters);
    writeFileSync(at('other/plan.yaml'), text);
    const also = await mastersOutside(at('other/plan.yaml'));
    expect(also).toEqual([realpathSync(at('outside.stl'))]);
    const served = await startPreview({ page: at('page'), plan: at('other/plan.yaml'), also });
    const get = async (path: string) => {
      const answer = await fetch(`${served.url}plan/file?path=${encodeURIComponent(path)}`);
      return [answer.status, (await answer.text()) === 'secret'];
    };
    // What lies outside is called secret in these tests: only the one that was found is given out.
    expect(await Promise.all(paths.map(get))).toEqual([[200, true], ...Array(4).fill([403, false])]);
    // Named later, whoever wrote it: not given out.
    writeFileSync(at('second.stl'), 'secret');
    writeFileSync(at('other/plan.yaml'), text.replace('../outside.stl', '../second.stl'));
    expect(await get('../second.stl')).toEqual([403, false]);
    // In place of one that was found now a link: not followed.
    writeFileSync(at('other/plan.yaml'), text);
    rmSync(at('outside.stl'));
    symlinkSync(at('secret.txt'), at('outside.stl'));
    expect(await get('../outside.stl')).toEqual([403, false]);
    await served.close();
  });
});

describe('saving', () => {
  it('writes the plan byte by byte, and refuses where the file changed meanwhile', async () => {
    const { hash } = await planNow();
    const headers = { 'x-write-token': preview.token, 'if-match': hash };
    const mine = `${plan}# mine\n`;
    const saved = await put('/plan', headers, mine);
    expect(saved.status).toBe(200);
    expect(readFileSync(at('shop/plan.yaml'), 'utf8')).toBe(mine);
    const late = await put('/plan', headers, `${plan}# late\n`);
    expect(late.status).toBe(409);
    expect(JSON.parse(late.body)).toMatchObject({ text: mine });
    expect(readFileSync(at('shop/plan.yaml'), 'utf8')).toBe(mine);
    const blind = await put('/plan', { 'x-write-token': preview.token }, 'x');
    expect(blind.status).toBe(428);
  });

  it('tells the page when the plan changes on disk', async () => {
    const told = new Promise<string>((resolve) => {
      request({ host: '127.0.0.1', port, path: '/plan/changes' }, (response) => {
        response.on('data', (part: Buffer) => {
          if (part.includes('event: change')) resolve('told');
          else writeFileSync(at('shop/plan.yaml'), `${plan}# changed by hand\n`);
        });
        response.on('error', () => {});
      }).end();
    });
    expect(await told).toBe('told');
  });
});

describe('the command', () => {
  it('says of a port that is taken, or is none, what to do', async () => {
    const other = createServer();
    const taken = await new Promise<number>((resolve) => {
      other.listen(0, '127.0.0.1', () => resolve((other.address() as { port: number }).port));
    });
    const busy = await run('preview', at('shop'), '--port', String(taken));
    expect(busy.code).toBe(2);
    expect(busy.err).toMatch(/port \d+ is taken; leave --port out|page is not built/);
    other.close();
    expect(await run('preview', '--port', '99999999')).toMatchObject({ code: 2 });
    expect(await run('preview', at('nowhere.yaml'))).toMatchObject({ code: 2 });
  });
});
