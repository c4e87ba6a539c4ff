import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/commands.ts';
import { EXPLAINED, GUIDE_PAGES } from '../../src/cli/guide-pages.ts';
import { run } from '../cli/run.ts';

describe('the help of a command', () => {
  it('has a page of the guide for each, and for no other', () => {
    expect(Object.keys(EXPLAINED).sort()).toEqual(COMMANDS.map(({ name }) => name).sort());
  });

  it.each(COMMANDS.map(({ name }) => name))('%s ends with the page that explains it', async (name) => {
    const { code, out } = await run([name, '--help']);
    const page = GUIDE_PAGES.find((each) => each.name === EXPLAINED[name])!;
    expect([code, out.trimEnd().split('\n').at(-1)]).toEqual([
      0,
      `Explained in the guide, “${page.title}”: matwright guide ${page.name}`,
    ]);
  });
});
