import { expect, test } from 'vitest';
import { commandName } from '../../src/cli/command-name.ts';
import { COMMANDS } from '../../src/cli/commands.ts';
import { run } from './run.ts';

test('the first word that is no option is the command, and help is help of the next', () => {
  expect(commandName(['pattern', 'job.yaml'])).toBe('pattern');
  expect(commandName(['--json', 'check', 'job.yaml'])).toBe('check');
  expect(commandName(['help', 'pattern'])).toBe('pattern');
  expect(commandName(['help'])).toBeUndefined();
  expect(commandName(['--version'])).toBeUndefined();
});

test.each(COMMANDS.map(({ name }) => name))('help %s says what %s --help says', async (name) => {
  expect(await run(['help', name])).toEqual(await run([name, '--help']));
});

test('help of a command that is none is refused', async () => {
  const { code, err } = await run(['help', 'patern']);
  expect([code, err]).toEqual([2, expect.stringContaining('did you mean pattern?')]);
});
