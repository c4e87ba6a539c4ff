import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/mat/solve.ts';
import { showPath } from '../../src/problems/show.ts';
import { FONTS } from '../fonts/loaded.ts';
import { AS_CUT_ROWS } from './bad-as-cut.ts';
import { framed, layers, ROWS, sound, withArt } from './bad-jobs.ts';
import { all, board, opening } from './job.ts';

const mm = (width: number, height: number) => ({ width, height });

describe('problems and warnings', () => {
  it('has a sound job to start from', () => {
    expect(solve(sound())).toMatchObject({ ok: true, warnings: [] });
    expect(solve(framed({}))).toMatchObject({ ok: true, warnings: [] });
    expect(solve(withArt({}))).toMatchObject({ ok: true, warnings: [] });
  });

  const EVERY = [...ROWS, ...AS_CUT_ROWS];

  it.each(EVERY)('%s is an %s at %s: %s', (code, severity, path, says, job) => {
    const result = solve(job, { fonts: FONTS });
    const problems = result.ok ? result.warnings : result.problems;
    const found = problems.find((each) => each.code === code && showPath(each.path) === path);
    expect(found, JSON.stringify(problems)).toMatchObject({ severity });
    expect(found!.message).toContain(says);
    expect(found!.message).not.toMatch(/\.$/);
    expect(found!.hint === '' && !found!.message.includes('needed')).toBe(false);
    expect(result.ok).toBe(severity === 'warning' && !problems.some((each) => each.severity === 'error'));
  });

  it('makes every code appear that the folder has', () => {
    const folder = new URL('../../src/mat/', import.meta.url);
    const source = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts'))
      .map((file) => readFileSync(new URL(file, folder), 'utf8'))
      .join('\n');
    const codes = [...source.matchAll(/'([a-z]+(?:-[a-z]+)+)'/g)].map((match) => match[1]!);
    // The size that no board has depends on what the text says of its unit: large.test.ts.
    const made = new Set([...EVERY.map(([code]) => code), 'lettering-needs-fonts', 'size-large']);
    expect(made).toEqual(new Set(codes));
  });

  it('asks for the outlines of letters where a job has lettering, and names the texts', () => {
    const lettered = ROWS.find(([code]) => code === 'lettering-off-mat')![4];
    const fonts = { tables: FONTS.tables, rare: [] };
    for (const result of [solve(lettered), solve(lettered, { fonts })]) {
      expect(result).toMatchObject({
        ok: false,
        problems: [{ code: 'lettering-needs-fonts', path: ['lettering', 0, 'text'] }],
      });
      expect(result.ok ? '' : result.problems[0]!.message).toContain(`the lettering ${lettered.lettering![0]!.text} `);
    }
  });

  it('tells of everything that fails at once', () => {
    const job = sound({
      openings: [opening({ artwork: mm(200, 300), overlap: { ...all(5), top: -9 } })],
      mat: {
        frame: { nominal: mm(300, 400), clearance: 0, lip: 60 },
        layers: layers({ reveal: 1 }, { reveal: 1.2, board: board(4) }),
      },
    });
    const result = solve(job);
    expect(result.ok).toBe(false);
    const codes = (result.ok ? [] : result.problems).map((each) => each.code);
    expect(new Set(codes)).toEqual(new Set(['overlap-none', 'strip-hidden', 'border-hidden', 'board-thick']));
    expect(codes.filter((code) => code === 'strip-hidden')).toHaveLength(2);
  });

  it('names two independent contradictions, each once', () => {
    const result = solve(sound({ mat: { border: { left: 50, right: 52, top: 50, bottom: 47 } } }));
    expect(result).toMatchObject({
      problems: [
        { message: 'outer width 300 mm is given, but the other sizes make 302 mm (difference 2 mm)' },
        { message: 'outer height 400 mm is given, but the other sizes make 397 mm (difference 3 mm)' },
      ],
    });
  });
});
