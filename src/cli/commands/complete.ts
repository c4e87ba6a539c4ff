import { RootCommand, ShellCompDirective } from '@bomb.sh/tab';
import { Argument, Command } from 'commander';
import { JIGS } from '../../documents/jigs/jigs.ts';
import { OPTIONS, type Option } from '../../outputs/option-table.ts';
import { OUTPUTS } from '../../outputs/table.ts';
import { PAPERS } from '../../papers/table.ts';
import { CALIBRATED } from '../../shop/readings/readings.ts';
import { commandName } from '../command-name.ts';
import { note } from '../say.ts';
import { templates } from '../templates.ts';
import { UsageError } from '../usage.ts';

const SHELLS = ['bash', 'zsh', 'fish'] as const;
type Shell = (typeof SHELLS)[number];

/** What a shell has to know to complete commands, options and their words; it asks again at each key, `complete -- WORDS`. */
export function define(command: Command): void {
  command
    .addArgument(new Argument('[shell]', 'for which shell a script is printed').choices(SHELLS).argOptional())
    .argument('[words...]', 'what is typed so far, behind --, as the script asks')
    .addHelpText(
      'after',
      `
Examples:
  matwright complete bash >> ~/.bashrc
  matwright complete zsh > "\${fpath[1]}/_matwright"
  matwright complete fish > ~/.config/fish/completions/matwright.fish
`,
    )
    .action((shell: Shell | undefined) => {
      if (shell === undefined) throw new UsageError(`for which shell? ${SHELLS.join(', ')}`);
      note(script(shell));
    });
}

/** What the library prints. */
function printed(work: () => void): readonly string[] {
  const lines: string[] = [];
  const { log } = console;
  console.log = (line: string) => lines.push(line);
  try {
    work();
  } finally {
    console.log = log;
  }
  return lines;
}

const NAME = 'matwright';

/** Without the helpers that not every machine has with its bash, the words are those that bash gives itself. */
const BASH_HELPER = `declare -F _get_comp_words_by_ref >/dev/null || _get_comp_words_by_ref() {
    words=("\${COMP_WORDS[@]}"); cword=$COMP_CWORD; cur=\${COMP_WORDS[COMP_CWORD]}; prev=\${COMP_WORDS[COMP_CWORD-1]}
}
`;

function script(shell: Shell): string {
  const text = printed(() => new RootCommand().setup(NAME, NAME, shell)).join('\n');
  // Where nothing of ours fits, bash completes names of files, as the others do by themselves.
  return shell === 'bash' ? `${BASH_HELPER}${text.replace('\ncomplete -F ', '\ncomplete -o default -F ')}` : text;
}

/** A command of the table, as far as it is needed here: the table leads here itself. */
interface Entry {
  readonly name: string;
  readonly summary: string;
  readonly load: () => Promise<{ readonly define: (command: Command) => void }>;
}

/** Answers a script: the words that fit, a line each, and whether names of files do. */
export async function answer(words: readonly string[], commands: readonly Entry[]): Promise<void> {
  const root = new RootCommand();
  for (const { name, summary } of commands) root.command(name, summary);
  const entry = commands.find(({ name }) => name === commandName(words.slice(0, -1)));
  if (entry !== undefined) {
    const own = new Command(entry.name);
    (await entry.load()).define(own);
    await addTo(root, own);
  }
  const lines = printed(() => root.parse([...words]));
  const last = words.at(-1) ?? '';
  const files = lines.length === 1 && !last.startsWith('-');
  for (const line of lines.slice(0, -1)) note(line);
  note(files ? `:${ShellCompDirective.ShellCompDirectiveDefault}` : lines.at(-1)!);
}

const offering =
  (words: readonly string[]) =>
  (complete: (value: string, description: string) => void): void => {
    for (const word of words) complete(word, '');
  };

async function addTo(root: RootCommand, own: Command): Promise<void> {
  const target = root.commands.get(own.name())!;
  for (const { long, description, required, optional } of own.options) {
    const name = long?.replace(/^--/u, '');
    if (name === undefined) continue;
    const offered = offeredFor(name, own.name());
    if (required || optional) target.option(name, description, offering(offered));
    else target.option(name, description);
  }
  for (const argument of own.registeredArguments) {
    const offered = argument.argChoices ?? (await kindsOf(own.name()));
    target.argument(argument.name(), offering(offered), argument.variadic);
  }
}

/** The words that an option takes, where they are known without a shop. */
function offeredFor(name: string, command: string): readonly string[] {
  if (name === 'paper') return PAPERS.map(({ id }) => id);
  if (name === 'format') return OUTPUTS.find(({ id }) => id === command)?.formats ?? [];
  const option: Option | undefined = Object.entries(OPTIONS).find(([key]) => key === name)?.[1];
  return option?.words ?? [];
}

/** What the first argument of a command is, where it is no file. */
async function kindsOf(command: string): Promise<readonly string[]> {
  switch (command) {
    case 'jig':
      return JIGS.map(({ kind }) => kind);
    case 'calibrate':
      return CALIBRATED;
    case 'new':
      return [...(await templates()).map(({ name }) => name), 'shop'];
    default:
      return [];
  }
}
