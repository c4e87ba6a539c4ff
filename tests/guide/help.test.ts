import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commands.ts';
import { GUIDE_PAGES } from '../../src/cli/guide-pages.ts';
import { run } from '../cli/run.ts';

describe('the help of a command', () => {
  it.each(COMMANDS)('$name ends with the page of the guide that explains it', async ({ name, guide }) => {
    const { code, out } = await run([name, '--help']);
    const page = GUIDE_PAGES.find((each) => each.name === guide)!;
    expect([code, out.trimEnd().split('\n').at(-1)]).toEqual([
      0,
      `Explained in the guide, “${page.title}”: matwright guide ${page.name}`,
    ]);
  });
});
