import { Command, CommanderError } from 'commander';
import { nearest } from '../problems/nearest.ts';
import { error } from '../problems/problem.ts';
import { commandName } from './command-name.ts';
import { COMMANDS } from './commands.ts';
import { forget } from './files/this-run.ts';
import { codeOf, reason } from './files/why.ts';
import { GUIDE_PAGES, type GuidePageName } from './guide-pages.ts';
import { fail } from './say.ts';
import { UsageError } from './usage.ts';

/** Runs one command. Returns the exit code: 0 done, 2 the input or the usage is wrong, 1 anything else. */
export async function main(args: readonly string[], version: string): Promise<number> {
  const program = new Command('matwright')
    .description('Full-scale patterns and bench paper for window mats, from the description of a piece.')
    .version(version)
    .exitOverride()
    .showHelpAfterError('(matwright --help shows the commands)')
    .configureOutput({ writeErr: (text) => process.stderr.write(text) });
  if (process.stdout.listenerCount('error', unheard) === 0) {
    process.stdout.on('error', unheard);
    // Whoever does not hear of problems still gets the exit code.
    process.stderr.on('error', () => undefined);
  }
  forget();
  // A shell asks at each key: nothing but the answer may be printed.
  if (args[0] === 'complete' && args[1] === '--') {
    await (await import('./commands/complete.ts')).answer(args.slice(2), COMMANDS);
    return 0;
  }
  const json = args.includes('--json');
  const name = commandName(args);
  const wanted = COMMANDS.find((entry) => entry.name === name);
  // The list of all commands is for whoever asks for none.
  for (const entry of wanted === undefined ? COMMANDS : [wanted]) {
    const command = program.command(entry.name).description(entry.summary).exitOverride();
    if (entry !== wanted) continue;
    (await entry.load()).define(command);
    command.addHelpText('after', explained(entry.guide));
  }
  if (name !== undefined && wanted === undefined) {
    const near = nearest(
      name,
      COMMANDS.map((entry) => entry.name),
    );
    process.stderr.write(
      `matwright: there is no command ${JSON.stringify(name)}${near === undefined ? '' : `; did you mean ${near}?`}\n`,
    );
    process.stderr.write(`commands: ${COMMANDS.map((entry) => entry.name).join(', ')}\n`);
    return 2;
  }
  try {
    await program.parseAsync([...args], { from: 'user' });
    return (process.exitCode as number | undefined) ?? 0;
  } catch (problem) {
    if (problem instanceof CommanderError) {
      if (problem.exitCode !== 0 && json) fail([error('usage', [], problem.message.replace(/^error: /u, ''))], true);
      return problem.exitCode === 0 ? 0 : 2;
    }
    if (problem instanceof UsageError) {
      if (json) fail([error('usage', [], problem.message)], true);
      else process.stderr.write(`matwright: ${problem.message}\n`);
      return 2;
    }
    const reason = problem instanceof Error ? problem.message : String(problem);
    process.stderr.write(`matwright: could not finish: ${reason}\n`);
    return 1;
  }
}

/** Where the guide explains a command; the last line of its help. */
function explained(page: GuidePageName): string {
  const title = GUIDE_PAGES.find(({ name }) => name === page)!.title;
  return `Explained in the guide, “${title}”: matwright guide ${page}\n`;
}

/** A reader that has seen enough, such as head, closes the pipe: that is no failure. */
function unheard(problem: Error): void {
  if (codeOf(problem) === 'EPIPE') process.exit(0);
  process.stderr.write(`matwright: standard output cannot be written: ${reason(problem)}\n`);
  process.exit(1);
}
