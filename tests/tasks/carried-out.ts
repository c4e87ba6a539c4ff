import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BEING_UNDERSTOOD } from './being-understood.ts';
import { MAKING } from './making.ts';
import { STARTING } from './starting.ts';
import type { Task } from './task.ts';

export const TASKS: readonly Task[] = [...STARTING, ...BEING_UNDERSTOOD, ...MAKING];

/** Carries a task out in an empty folder with the program at a path; what is not as it should be. */
export async function carriedOut(program: string, task: Task): Promise<readonly string[]> {
  const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
  try {
    for (const [name, text] of Object.entries(task.files ?? {})) writeFileSync(join(folder, name), text);
    let ran = { code: -1, said: '' };
    for (const call of task.calls) ran = await called(program, call, folder, task.stdin ?? '');
    const given = Object.keys(task.files ?? {});
    const made = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
      // What the program notes of its own runs is hidden, and nobody looks for it.
      (name) => !given.includes(name) && !name.endsWith('.matwright.json'),
    );
    const wanted = task.made === undefined ? made : task.made;
    return [
      ...(ran.code === (task.code ?? 0) ? [] : [`ended with ${ran.code}: ${ran.said}`]),
      ...task.sees.filter((each) => !ran.said.includes(each)).map((each) => `does not say ${each}: ${ran.said}`),
      ...(task.never ?? []).filter((each) => ran.said.includes(each)).map((each) => `says ${each}: ${ran.said}`),
      ...(/\n +at .*:\d+:\d+/u.test(ran.said) ? [`throws: ${ran.said}`] : []),
      ...(made.sort().join() === [...wanted].sort().join() ? [] : [`leaves ${made.join()}`]),
    ];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function called(program: string, args: readonly string[], cwd: string, stdin: string) {
  return new Promise<{ code: number; said: string }>((resolve, reject) => {
    const child = spawn(process.execPath, [program, ...args], { cwd, stdio: ['pipe', 'pipe', 'pipe'] });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => (said += String(chunk)));
    child.stdin.on('error', () => undefined);
    child.stdin.end(stdin);
    child.on('error', reject);
    child.on('close', (code) => resolve({ code: code ?? -1, said }));
  });
}
