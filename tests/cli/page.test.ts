import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { built } from '../built.ts';

describe('the command that writes the page', () => {
  const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  const run = async (...args: readonly string[]) =>
    spawnSync(process.execPath, [join(await built(), 'cli.js'), 'page', ...args], { encoding: 'utf8' });

  const element = (html: string, id: string): unknown =>
    JSON.parse(new RegExp(`<script type="application/json" id="${id}">(.*?)</script>`, 'u').exec(html)![1]!);

  it('puts the shop and the jobs in it, whatever their texts hold', async () => {
    const job = join(folder, 'odd.yaml');
    const text = 'title: "</script><b>$& Heron"\nmat: {outer: 10 x 12}\nopenings: [{size: 6 x 8}]\n';
    writeFileSync(job, text);
    const shop = 'boards: {bone-4: {name: "Bone <!--", thickness: 1.4 mm}}\n';
    writeFileSync(join(folder, 'shop.yaml'), shop);
    const { status, stdout, stderr } = await run(job, '--out', folder);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toContain('matwright.html written to');
    const html = readFileSync(join(folder, 'matwright.html'), 'utf8');
    expect(element(html, 'pieces')).toEqual([{ name: 'odd.yaml', summary: '</script><b>$& Heron', text }]);
    expect(element(html, 'shop')).toEqual({ file: 'shop.yaml', text: shop });
    const empty = readFileSync(join(await built(), 'matwright.html'), 'utf8');
    expect(html.split('<script>')[1]).toBe(empty.split('<script>')[1]);
  });

  it('says what is wrong with a job, and takes it all the same', async () => {
    const job = join(folder, 'wrong.yaml');
    writeFileSync(job, 'mat: {outer: 16 x 20, border: 3}\nopenings: [{size: 9 x 13}]\n');
    const { status, stderr } = await run(job, '--out', folder);
    expect(status).toBe(0);
    expect(stderr).toContain('border 3 in is given');
  });

  it('refuses a job that is not there', async () => {
    const { status, stderr } = await run(join(folder, 'none.yaml'), '--out', folder);
    expect(status).toBe(2);
    expect(stderr).toContain('there is no such job');
  });
});
