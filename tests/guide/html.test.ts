import { describe, expect, it } from 'vitest';
import { GUIDE_PAGES } from '../../src/cli/guide-pages.ts';
import { guideHtml } from '../../src/dev/guide/html.ts';
import { command } from '../cli/spawned.ts';

describe('the guide as one file', () => {
  const html = guideHtml('.');
  const all = (pattern: RegExp): readonly string[] => [...html.matchAll(pattern)].map((match) => match[1]!);

  it('needs nothing beside it and runs nothing', () => {
    expect(html).not.toMatch(/<script|<link|<iframe|javascript:|url\(/i);
    expect(all(/(?:src|href)="([^"#]{1,40})/g).filter((start) => !start.startsWith('data:image/'))).toEqual([]);
  });

  it('has every page, and every link leads to a place in it', () => {
    const ids = all(/ id="([^"]+)"/g);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { name } of GUIDE_PAGES) expect(ids).toContain(name);
    const links = all(/href="#([^"]+)"/g);
    expect(links.length).toBeGreaterThan(40);
    expect(links.filter((link) => !ids.includes(link))).toEqual([]);
  });

  it('shows what was made and none of the marks', () => {
    expect(html).not.toContain('<!-- ');
    expect(html).toContain('border     top 3 in, sides 2 3/4 in, bottom 3 1/2 in');
  });
});

describe('matwright guide', () => {
  it('says where it lies, and a page’s place', async () => {
    const { code, out } = await command(['guide', 'faults']);
    expect(code).toBe(0);
    expect(out).toMatch(/^open in a browser: \/.*\/guide\.html#faults\n$/);
  });

  it('refuses a page that there is not, and names those that are', async () => {
    const { code, err } = await command(['guide', 'falts']);
    expect([code, err]).toEqual([2, expect.stringContaining('faults')]);
  });
});
