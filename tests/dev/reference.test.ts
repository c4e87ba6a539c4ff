import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { referencePage } from '../../src/dev/reference.ts';

it('the reference of jobs and shops is what the schemas say (npm run reference)', () => {
  const page = readFileSync('examples/reference.md', 'utf8');
  expect(page).toBe(referencePage());
  for (const key of ['`mat.layers[].reveal`', '`openings[].overlap`', '`heads.NAME.overrun`', '`guide.setAt`']) {
    expect(page).toContain(key);
  }
});
