import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { built } from '../built.ts';
import { carriedOut, TASKS } from './carried-out.ts';

let program = '';

/** `npm run tasks` does the same with the package as it is installed. */
describe('the first hour, by the program as it is shipped', () => {
  beforeAll(async () => {
    program = join(await built(), 'cli.js');
  }, 240_000);

  it('is ninety tasks and more', () => {
    expect(TASKS.length).toBeGreaterThanOrEqual(90);
    expect(new Set(TASKS.map(({ what }) => what)).size).toBe(TASKS.length);
  });

  it.each(TASKS)('$what', async (task) => expect(await carriedOut(program, task)).toEqual([]));
});
