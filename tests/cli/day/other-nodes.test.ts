import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { built } from '../../built.ts';

/** Programs of other versions, parted by colons: `NODES=/opt/node-22/bin/node:/opt/node-24/bin/node`. */
const NODES = (process.env.NODES ?? '').split(':').filter((path) => path !== '');
const TEMPLATES = join(import.meta.dirname, '../../../templates');

function madeBy(node: string, cli: string): readonly string[] {
  const top = mkdtempSync(join(tmpdir(), 'matwright-'));
  try {
    mkdirSync(join(top, 'jobs'));
    cpSync(TEMPLATES, join(top, 'jobs'), { recursive: true });
    for (const name of readdirSync(TEMPLATES).filter((each) => each !== 'shop.yaml')) {
      const text = readFileSync(join(TEMPLATES, name), 'utf8');
      writeFileSync(join(top, 'jobs', name), `${text}\nmake: [pattern, proof, ticket, cutfile]\n`);
    }
    const { status } = spawnSync(node, [cli, 'make', 'jobs', '--out', 'out', '--quiet'], { cwd: top });
    expect([node, status]).toEqual([node, 0]);
    const names = readdirSync(join(top, 'out'), { recursive: true, encoding: 'utf8' }).sort();
    return names
      .filter((name) => statSync(join(top, 'out', name)).isFile())
      .map(
        (name) =>
          `${name} ${createHash('sha256')
            .update(readFileSync(join(top, 'out', name)))
            .digest('hex')}`,
      );
  } finally {
    rmSync(top, { recursive: true });
  }
}

it.skipIf(NODES.length === 0)(
  'makes a day of the same bytes on every version of Node',
  async () => {
    const cli = join(await built(), 'cli.js');
    const here = madeBy(process.execPath, cli);
    expect(here.length).toBeGreaterThan(100);
    for (const node of NODES) expect(madeBy(node, cli)).toEqual(here);
  },
  300_000,
);
