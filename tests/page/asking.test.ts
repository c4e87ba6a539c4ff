import { expect, test, vi } from 'vitest';
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

test('a stop takes back what is being made, not what else was asked', async () => {
  const started: string[] = [];
  const asking = new Asking(async () => {
    started.push('worker');
    return new Blob();
  });
  class Still {
    postMessage(): void {}
    terminate(): void {}
  }
  vi.stubGlobal('Worker', Still);
  const made = asking.ask('make', request);
  let looked = 'waits';
  void asking.ask('take', { jobs: [], wanted: { id: 'ticket', options: {} } }).catch(() => {
    looked = 'was taken back';
  });
  asking.stop();
  await expect(made).rejects.toThrow(TakenBack);
  await new Promise((resolve) => setImmediate(resolve));
  vi.unstubAllGlobals();
  expect([looked, started]).toEqual(['waits', ['worker', 'worker']]);
});
