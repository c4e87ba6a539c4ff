/**
 * Run as a process of its own, which ends by a signal that no process can catch. `step N FOLDER`: writes the set of `shelf.ts`
 * there and is killed before its step N; prints how many steps there are if it comes to the end. `loop FOLDER`: writes one generation of
 * the set after the other until somebody kills it.
 */
import { join } from 'node:path';
import { Inputs } from '../../../src/cli/files/inputs.ts';
import { HERE } from '../../../src/cli/files/place.ts';
import type { Piece } from '../../../src/cli/files/plan.ts';
import { writeSet } from '../../../src/cli/files/write-set.ts';
import { faulty } from './faulty.ts';
import { bytes, NEW, OLD, pieces } from './shelf.ts';

const [mode, ...rest] = process.argv.slice(2);
const KNOWN = { inputs: new Inputs(), doubtful: [] };

if (mode === 'step') {
  const [step, top] = rest;
  const { disk, steps } = faulty((done) => {
    if (done === Number(step)) process.kill(process.pid, 'SIGKILL');
  });
  await writeSet(pieces(top!), KNOWN, { ...HERE, disk });
  process.stdout.write(`${steps()}\n`);
} else {
  const [top] = rest;
  let before = OLD['shop/shop.yaml']!;
  for (let generation = 1; ; generation += 1) {
    const text = `generation ${generation}`;
    const set: readonly Piece[] = Object.keys(NEW).map((path) => ({
      file: join(top!, path),
      bytes: bytes(text),
      ...(path === 'shop/shop.yaml' ? { was: bytes(before) } : {}),
    }));
    await writeSet(set, KNOWN);
    before = text;
  }
}
