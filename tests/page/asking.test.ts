import { expect, test } from 'vitest';
import { Asking, TakenBack } from '../../src/page/engine/worker.ts';

const request = { jobs: [], wanted: [{ id: 'ticket' as const, options: {} }] };

test('who asked hears of a stop though the worker does not stand yet', async () => {
  const asking = new Asking(() => new Promise(() => undefined));
  const answer = asking.ask('make', request);
  asking.stop();
  await expect(answer).rejects.toThrow(TakenBack);
});

test('who asked hears that no worker can be had', async () => {
  const asking = new Asking(() => Promise.reject(new Error('no room for a worker')));
  await expect(asking.ask('make', request)).rejects.toThrow('no room for a worker');
});
