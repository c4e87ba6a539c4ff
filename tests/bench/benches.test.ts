import { afterEach, expect, it, vi } from 'vitest';
import { run } from './sheets.bench.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

it('the bench of many sheets, which runs seldom, still has its job accepted', () => {
  const lines: string[] = [];
  vi.spyOn(console, 'log').mockImplementation((line) => lines.push(String(line)));
  run(['70']);
  expect(lines.join('\n')).toMatch(/^ +4 sheets .* MiB$/);
});
