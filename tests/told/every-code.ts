import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Reporter, TestModule, TestRunEndReason } from 'vitest/node';
import { SECTIONS } from '../../src/dev/messages.ts';
import { allTold, fileIn } from './told-file.ts';

const TESTS = join(import.meta.dirname, '..');

const testFiles = (): number =>
  readdirSync(TESTS, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.test.ts')).length;

/** Codes of the page of messages that no test has made the sources tell. */
const untold = (told: ReadonlySet<string>): readonly string[] =>
  SECTIONS.flatMap(([, codes]) => Object.keys(codes)).filter((code) => !told.has(code));

/** After a run of all tests: one in which a code of the page of messages was never told has failed. */
export class EveryCode implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], _errors: unknown, reason: TestRunEndReason): void {
    const folder = process.env.MATWRIGHT_RUN_FOLDER;
    if (folder === undefined || reason !== 'passed' || modules.length < testFiles()) return;
    const missing = untold(existsSync(fileIn(folder)) ? allTold(folder) : new Set());
    if (missing.length === 0) return;
    process.stderr.write(`no test makes these codes of examples/messages.md appear: ${missing.join(', ')}\n`);
    process.exitCode = 1;
  }
}
