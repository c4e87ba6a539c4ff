import { basename, join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldersOf, safeName } from '../../../src/cli/day/folders.ts';

const folders = (...files: readonly string[]) =>
  foldersOf(
    files.map((file) => ({ file })),
    'out',
  ).map((folder) => basename(folder));

describe('names of folders', () => {
  it('are names on every disk', () => {
    const names = [
      'con',
      'NUL.txt',
      'com1',
      'a:b?',
      'heron. ',
      '..',
      '.hidden',
      'index.html',
      'patterns.pdf',
      ' ',
      'a\u0007b',
    ];
    expect(names.map(safeName)).toEqual([
      'job-con',
      'job-NUL.txt',
      'job-com1',
      'a-b-',
      'heron',
      'job',
      'hidden',
      'job-index.html',
      'job-patterns.pdf',
      'job',
      'a-b',
    ]);
    expect([...safeName('x'.repeat(300))]).toHaveLength(80);
    expect(safeName('Ha\u0308ring')).toBe('H\u00e4ring');
  });

  it('never lead anywhere else', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (name) => {
        const safe = safeName(name);
        expect(basename(join('out', safe))).toBe(safe);
        expect(safe).not.toMatch(/[\\/:*?"<>|]|[. ]$|^\./u);
        expect(safeName(safe)).toBe(safe);
      }),
    );
  });

  it('are no two alike on a disk that tells no capitals and no composed letters apart', () => {
    expect(folders('a/heron.yaml', 'b/Heron.yaml', 'terns.yaml')).toEqual(['a-heron', 'b-Heron', 'terns']);
    expect(folders('a/heron.yaml', 'a/heron.json')).toEqual(['a-heron-yaml', 'a-heron-json']);
    expect(folders('a/H\u00e4ring.yaml', 'b/Ha\u0308ring.yaml')).toEqual(['a-H\u00e4ring', 'b-H\u00e4ring']);
    expect(() => folders('a/heron.yaml', 'a/heron.yaml')).toThrow('would share a folder');
    expect(() => folders('a/con.yaml', 'b/a/con.yaml')).toThrow('would share a folder');
  });
});
