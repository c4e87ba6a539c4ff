import { join } from 'node:path';
import { expect, it } from 'vitest';
import { built } from '../built.ts';
import { spawned } from '../cli/spawned.ts';

it('pages, transcripts, numbers and pictures are what the program makes, and links lead somewhere (npm run guide)', async () => {
  const program = join(await built(), 'cli.js');
  const tsx = 'node_modules/tsx/dist/cli.mjs';
  const { code, out, err } = await spawned([tsx, 'src/dev/guide.ts', '--check', '--program', program], {
    limitMs: 120_000,
  });
  expect([out, err]).toEqual(['', '']);
  expect(code).toBe(0);
}, 240_000);
