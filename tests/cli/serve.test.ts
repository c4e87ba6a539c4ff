import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { request as ask } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type Served, serve } from '../../src/cli/serve/server.ts';

const JOB = 'mat: {outer: 10 x 12}\nopenings: [{size: 6 x 8}]\n';

interface Answer {
  readonly status: number;
  readonly body: string;
  readonly etag: string;
}

describe('the page, served', () => {
  const top = mkdtempSync(join(tmpdir(), 'matwright-serve-'));
  const folder = join(top, 'shared');
  let site: Served;
  let port = '';
  let token = '';
  beforeAll(async () => {
    mkdirSync(folder);
    site = await serve(folder, async (base) => `<p>${base}</p>`);
    port = new URL(site.address).port;
    token = new URL(site.address).pathname;
  });
  beforeEach(() => {
    for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true });
    writeFileSync(join(folder, 'job.yaml'), JOB);
    writeFileSync(join(top, 'secret.yaml'), 'secret');
  });
  afterAll(async () => {
    await site.close();
    rmSync(top, { recursive: true });
  });

  /** Sent as it stands: nothing tidies the path on its way. */
  const send = (
    path: string,
    { method = 'GET', headers = {}, body }: { method?: string; headers?: Record<string, string>; body?: string } = {},
  ): Promise<Answer> =>
    new Promise((resolve, reject) => {
      const sent = ask({ host: '127.0.0.1', port, path, method, headers, agent: false }, (response) => {
        const parts: Buffer[] = [];
        response.on('data', (part: Buffer) => parts.push(part));
        response.on('end', () =>
          resolve({
            status: response.statusCode ?? 0,
            body: Buffer.concat(parts).toString(),
            etag: response.headers.etag ?? '',
          }),
        );
      });
      sent.on('error', reject);
      sent.end(body);
    });
  const own = () => ({ origin: `http://127.0.0.1:${port}` });
  const put = (name: string, body: string, how: Record<string, string>) =>
    send(`${token}file?name=${encodeURIComponent(name)}`, { method: 'PUT', headers: { ...own(), ...how }, body });
  const outside = () => readdirSync(top).sort();

  test('reads, lists and saves', async () => {
    expect((await send(token)).body).toBe(`<p>${token}</p>`);
    expect(JSON.parse((await send(`${token}files`)).body)).toEqual({ files: ['job.yaml'] });
    const read = await send(`${token}file?name=job.yaml`);
    expect(read.body).toBe(JOB);
    const saved = await put('job.yaml', `${JOB}# more\n`, { 'if-match': read.etag });
    expect(saved.status).toBe(200);
    expect(readFileSync(join(folder, 'job.yaml'), 'utf8')).toBe(`${JOB}# more\n`);
    expect((await put('new.yaml', JOB, { 'if-none-match': '*' })).status).toBe(200);
    const files = JSON.stringify([{ name: 'pattern-1.pdf', base64: Buffer.from('bytes').toString('base64') }]);
    expect((await send(`${token}outputs?name=job`, { method: 'POST', headers: own(), body: files })).status).toBe(200);
    expect(readFileSync(join(folder, 'job/pattern-1.pdf'), 'utf8')).toBe('bytes');
  });

  test.each([
    ['no token', () => '/', {}],
    ['another token', () => `/${'x'.repeat(32)}/files`, {}],
    ['part of the token', () => `${token.slice(0, -2)}/files`, {}],
    ['a foreign host', () => `${token}files`, { host: 'elsewhere.example' }],
    ['a host that leads here by name', () => `${token}files`, { host: 'localhost' }],
    ['a foreign origin', () => `${token}files`, { origin: 'https://elsewhere.example' }],
    ['no origin of its own', () => `${token}files`, { origin: 'null' }],
    ['a page of another site', () => `${token}files`, { 'sec-fetch-site': 'cross-site' }],
    ['an address of somewhere else', () => 'http://elsewhere.example/', {}],
  ])('refuses %s', async (_, path, headers: Record<string, string>) => {
    expect((await send(path(), { headers })).status).toBe(403);
  });

  test('refuses a change from nowhere', async () => {
    const { etag } = await send(`${token}file?name=job.yaml`);
    const answer = await send(`${token}file?name=job.yaml`, {
      method: 'PUT',
      headers: { 'if-match': etag },
      body: 'gone',
    });
    expect(answer.status).toBe(403);
    expect(readFileSync(join(folder, 'job.yaml'), 'utf8')).toBe(JOB);
  });

  test.each([
    '../secret.yaml',
    'a/../../secret.yaml',
    '..\\secret.yaml',
    '/etc/hosts.yaml',
    'C:/secret.yaml',
    '.hidden.yaml',
    'nul.yaml',
    'CON.yaml',
    'com1.yaml',
    'job.yaml\0.png',
    'job.yaml.',
    './job.yaml',
    'job.exe',
    '',
    `${'a/'.repeat(40)}job.yaml`,
  ])('takes %j for no file of the folder', async (name) => {
    expect((await send(`${token}file?name=${encodeURIComponent(name)}`)).status).toBe(404);
    expect((await put(name, 'mine', { 'if-none-match': '*' })).status).toBe(404);
    expect(outside()).toEqual(['secret.yaml', 'shared']);
    expect(readFileSync(join(top, 'secret.yaml'), 'utf8')).toBe('secret');
    expect(readdirSync(folder)).toEqual(['job.yaml']);
  });

  test.each([
    ['a link to a file outside', 'link.yaml', () => symlinkSync(join(top, 'secret.yaml'), join(folder, 'link.yaml'))],
    ['a link to a folder outside', 'out/secret.yaml', () => symlinkSync(top, join(folder, 'out'))],
    ['a link that leads nowhere', 'no.yaml', () => symlinkSync(join(top, 'new.yaml'), join(folder, 'no.yaml'))],
    ['a link to a device', 'zero.yaml', () => symlinkSync('/dev/zero', join(folder, 'zero.yaml'))],
  ])('follows no %s', async (_, name, make) => {
    make();
    expect((await send(`${token}file?name=${encodeURIComponent(name)}`)).status).toBe(404);
    expect((await put(name, 'mine', { 'if-none-match': '*' })).status).toBe(404);
    const outputs = JSON.stringify([{ name: 'x.pdf', base64: '' }]);
    if (name.includes('/'))
      expect((await send(`${token}outputs?name=out`, { method: 'POST', headers: own(), body: outputs })).status).toBe(
        404,
      );
    expect(readFileSync(join(top, 'secret.yaml'), 'utf8')).toBe('secret');
    expect(outside()).toEqual(['secret.yaml', 'shared']);
  });

  test('does not save over what something else has changed, nor over what is there already', async () => {
    const { etag } = await send(`${token}file?name=job.yaml`);
    writeFileSync(join(folder, 'job.yaml'), 'other');
    expect((await put('job.yaml', 'mine', { 'if-match': etag })).status).toBe(409);
    expect((await put('job.yaml', 'mine', { 'if-none-match': '*' })).status).toBe(409);
    expect((await put('job.yaml', 'mine', {})).status).toBe(400);
    expect(readFileSync(join(folder, 'job.yaml'), 'utf8')).toBe('other');
  });

  test('of a thousand changes at once one is made, and the rest hear that it was', { timeout: 60_000 }, async () => {
    const { etag } = await send(`${token}file?name=job.yaml`);
    const answers = await Promise.all(
      Array.from({ length: 1000 }, (_, i) => put('job.yaml', `${JOB}# ${i}\n`, { 'if-match': etag })),
    );
    const made = answers.flatMap(({ status }, i) => (status === 200 ? [i] : []));
    expect(made).toHaveLength(1);
    expect(answers.filter(({ status }) => status === 409)).toHaveLength(999);
    expect(readFileSync(join(folder, 'job.yaml'), 'utf8')).toBe(`${JOB}# ${made[0]}\n`);
    expect(readdirSync(folder)).toEqual(['job.yaml']);
  });

  test('takes no outputs that are none, and writes all of them or none', async () => {
    const files = JSON.stringify([
      { name: 'a.pdf', base64: 'AA==' },
      { name: 'job.yaml', base64: 'AA==' },
    ]);
    const post = (name: string, body: string) =>
      send(`${token}outputs?name=${encodeURIComponent(name)}`, { method: 'POST', headers: own(), body });
    expect((await post('job', files)).status).toBe(404);
    expect((await post('..', JSON.stringify([{ name: 'a.pdf', base64: '' }]))).status).toBe(404);
    expect((await post('job', '{"not": "a list"}')).status).toBe(400);
    expect(existsSync(join(folder, 'job'))).toBe(false);
  });
});
