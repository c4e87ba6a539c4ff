import { spawnSync } from 'node:child_process';
import { appendFileSync, existsSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { NotPlain, readPlain } from '../../../src/cli/files/plain.ts';
import { findShop, readSource } from '../../../src/cli/input.ts';
import { UsageError } from '../../../src/cli/usage.ts';

const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
afterAll(() => rmSync(folder, { recursive: true }));
const at = (name: string): string => join(folder, name);

const kindOf = (path: string, most = 1000): string | undefined => {
  try {
    readPlain(path, most);
  } catch (problem) {
    return problem instanceof NotPlain ? problem.kind : (problem as NodeJS.ErrnoException).code;
  }
  return undefined;
};

describe('a plain file', () => {
  it('is read whole, up to its limit and not beyond', () => {
    writeFileSync(at('a'), 'x'.repeat(1000));
    expect(readPlain(at('a'), 1000)).toEqual(new TextEncoder().encode('x'.repeat(1000)));
    appendFileSync(at('a'), 'x');
    expect(kindOf(at('a'))).toBe('large');
    truncateSync(at('a'), 0);
    expect(readPlain(at('a'), 1000)).toHaveLength(0);
    // A hole of a terabyte costs nothing on the disk, and would cost all memory.
    truncateSync(at('a'), 2 ** 40);
    expect(kindOf(at('a'), 4e6)).toBe('large');
  });

  it('is none that is a folder, or is not there', () => {
    expect([kindOf(folder), kindOf(at('none'))]).toEqual(['folder', 'ENOENT']);
  });

  it.skipIf(!existsSync('/dev/zero'))('is no device (wants /dev)', () => {
    for (const path of ['/dev/zero', '/dev/null', '/dev/full']) expect([path, kindOf(path)]).toEqual([path, 'other']);
  });

  it.skipIf(spawnSync('mkfifo', [at('pipe')]).status !== 0)('is no pipe, which nobody waits for (wants mkfifo)', () => {
    expect(kindOf(at('pipe'))).toBe('other');
    symlinkSync('pipe', at('to-pipe'));
    expect(kindOf(at('to-pipe'))).toBe('other');
  });

  it.skipIf(!existsSync('/proc/self/status'))('is none that the system makes up (wants /proc)', () => {
    expect(kindOf('/proc/self/status', 1e6)).toBe('other');
    expect(kindOf('/proc/self')).toBe('folder');
  });
});

describe('a source', () => {
  const refused = (what: Promise<unknown>): Promise<unknown> => what.catch((problem: unknown) => problem);

  it('that is no text in UTF-8 is refused', async () => {
    writeFileSync(at('latin.yaml'), Buffer.from('title: Möwe\n', 'latin1'));
    const problem = await refused(readSource(at('latin.yaml'), 'job'));
    expect(problem).toBeInstanceOf(UsageError);
    expect(String(problem)).toContain('latin.yaml: the job is no text in UTF-8; save it so');
  });

  it('whose shop is a link that leads nowhere, a folder or a pipe is told so, not solved without', async () => {
    symlinkSync('nowhere.yaml', at('shop.yaml'));
    expect(String(await refused(findShop(at('job.yaml'), undefined)))).toContain(
      'shop.yaml is a link that leads nowhere',
    );
    expect(String(await refused(findShop(at('job.yaml'), at('shop.yaml'))))).toContain("there is no such shop's file");
    rmSync(at('shop.yaml'));
    symlinkSync('shop.yaml', at('shop.yaml'));
    expect(String(await refused(findShop(at('job.yaml'), undefined)))).toContain(
      'shop.yaml is a link that leads nowhere',
    );
    rmSync(at('shop.yaml'));
    symlinkSync('.', at('shop.yaml'));
    expect(String(await refused(findShop(at('job.yaml'), undefined)))).toContain(
      "is a folder; name the shop's file in it",
    );
    rmSync(at('shop.yaml'));
    expect(await findShop(at('job.yaml'), undefined)).toBeUndefined();
  });
});
