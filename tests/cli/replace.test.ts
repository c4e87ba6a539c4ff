import { chmod, mkdtemp, readdir, readFile, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { replaceText } from '../../src/cli/output/replace.ts';

describe('a text put in the place of another', () => {
  let folder = '';
  const path = (name: string) => join(folder, name);
  const content = (name: string) => readFile(path(name), 'utf8');
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'matwright-'));
    await writeFile(path('shop.yaml'), 'a: 1\n');
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));

  it('takes its name and its mode, and leaves nothing else behind', async () => {
    await chmod(path('shop.yaml'), 0o640);
    await replaceText(path('shop.yaml'), 'a: 1\n', 'a: 2\n');
    expect(await content('shop.yaml')).toBe('a: 2\n');
    expect((await stat(path('shop.yaml'))).mode & 0o777).toBe(0o640);
    expect(await readdir(folder)).toEqual(['shop.yaml']);
  });

  it('is refused where the file is read-only', async () => {
    await chmod(path('shop.yaml'), 0o444);
    await expect(replaceText(path('shop.yaml'), 'a: 1\n', 'a: 2\n')).rejects.toThrow(/read-only.*nothing was changed/);
    expect(await content('shop.yaml')).toBe('a: 1\n');
    expect(await readdir(folder)).toEqual(['shop.yaml']);
  });

  it('is refused where the file is another by now, or gone, or there though it was not', async () => {
    await writeFile(path('shop.yaml'), 'a: 1\nb: by hand\n');
    await expect(replaceText(path('shop.yaml'), 'a: 1\n', 'a: 2\n')).rejects.toThrow(/changed by something else/);
    expect(await content('shop.yaml')).toBe('a: 1\nb: by hand\n');
    await expect(replaceText(path('shop.yaml'), undefined, 'a: 2\n')).rejects.toThrow(/is there already/);
    await expect(replaceText(path('none.yaml'), 'a: 1\n', 'a: 2\n')).rejects.toThrow(/not there any more/);
    expect(await readdir(folder)).toEqual(['shop.yaml']);
  });

  it('is a new file where there was none', async () => {
    await replaceText(path('new.yaml'), undefined, 'a: 2\n');
    expect(await content('new.yaml')).toBe('a: 2\n');
  });

  it('follows a link, which stays one', async () => {
    await symlink(path('shop.yaml'), path('link.yaml'));
    await replaceText(path('link.yaml'), 'a: 1\n', 'a: 2\n');
    expect(await content('shop.yaml')).toBe('a: 2\n');
    expect((await readdir(folder, { withFileTypes: true })).filter((entry) => entry.isSymbolicLink())).toHaveLength(1);
  });

  it('leaves everything as it was where the disk refuses', async () => {
    await expect(replaceText(path('none/new.yaml'), undefined, 'a: 2\n')).rejects.toThrow(
      /cannot be written: it, or its folder, is not there \(ENOENT\); nothing was changed/,
    );
    expect(await readdir(folder)).toEqual(['shop.yaml']);
  });
});
