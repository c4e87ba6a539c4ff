import { describe, expect, it } from 'vitest';
import type { Crew } from '../../../src/cli/day/crew.ts';
import type { How } from '../../../src/cli/day/how.ts';
import { type JobDone, makeJobs } from '../../../src/cli/day/make-jobs.ts';
import { work } from '../../../src/cli/day/work.ts';
import { atOnce, type Writer } from '../../../src/cli/day/writer.ts';
import { progress } from '../../../src/cli/progress.ts';
import { UsageError } from '../../../src/cli/usage.ts';
import '../../../src/node.ts';

const JOB = 'units: mm\nmat: {outer: 120 x 150}\nopenings: [{size: 60 x 80}]\nmake: [ticket]\n';

const writing = (whole: Writer['whole']): Writer => ({ ...atOnce(false), whole });

const how = (run: Crew['run'], more: Partial<How> = {}): How => ({
  options: {},
  version: 'test',
  sheets: 9,
  force: false,
  verify: false,
  crew: { hands: 2, run, close: async () => undefined },
  progress: progress(true),
  stopped: () => false,
  writer: writing(async () => undefined),
  ...more,
});

async function made(asked: How, names = ['a', 'b', 'c']): Promise<ReadonlyMap<number, JobDone>> {
  const jobs = names.map((name) => ({
    shown: `${name}.yaml`,
    file: `${name}.yaml`,
    text: JOB,
    origin: { job: `${name}.yaml` },
  }));
  const done = new Map<number, JobDone>();
  await makeJobs(
    jobs,
    names.map((name) => `nowhere/${name}`),
    asked,
    (at, one) => done.set(at, one),
  );
  return done;
}

describe('jobs by themselves', () => {
  it('are finished where whoever is at one comes to an end', async () => {
    const run: Crew['run'] = async (kind, task) => {
      if (JSON.stringify(task).includes('b.yaml')) throw new Error('the thread has ended');
      return work(kind, task);
    };
    const done = await made(how(run));
    expect([0, 1, 2].map((at) => done.get(at)!.state !== undefined)).toEqual([true, false, true]);
    expect(done.get(1)!.problems).toMatchObject([
      { code: 'job-failed', file: 'b.yaml', message: 'the thread has ended' },
    ]);
  });

  it('are finished where one cannot be written', async () => {
    const whole: Writer['whole'] = async ({ folder }) => {
      if (folder.endsWith('a')) throw new UsageError('it is not permitted here');
      if (folder.endsWith('b')) throw new Error('the disk is full (ENOSPC)');
    };
    const done = await made(how(work, { writer: writing(whole) }));
    const codes = [0, 1, 2].map((at) => done.get(at)!.problems.map(({ code }) => code));
    expect(codes).toEqual([['job-unwritten'], ['job-failed'], []]);
  });

  it('are begun no more once all is to stop', async () => {
    let count = 0;
    const run: Crew['run'] = async (kind, task) => {
      count += 1;
      return work(kind, task);
    };
    const done = await made(
      how(run, { stopped: () => count > 0, crew: { hands: 1, run, close: async () => undefined } }),
    );
    expect([count, done.size]).toEqual([1, 1]);
  });
});
