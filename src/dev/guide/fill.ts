import type { Said, Terminal } from './terminal.ts';

/** What fills the marked places of a page. */
export interface Fillings {
  readonly terminal: Terminal;
  readonly number: (name: string) => string;
  readonly table: (name: string) => string;
}

/**
 * What a page is made of, in its order. Commands stand in blocks of `sh` and are run, all of them; the comments say where
 * what is made goes:
 *
 *     <!-- said -->        what the commands above said; `said, first 5` lines, `said, exit 2` where they are to fail
 *     <!-- file: F -->     a file as it lies there; `file: F, from guide:` its lines from there on
 *     <!-- write: F -->    the block below is written into F, as the reader does
 *     <!-- table: N -->    a table that is made here
 *     <!-- number: N -->   a number in running words
 *
 * All but `write` end in `<!-- end -->`.
 */
const PART =
  /^```sh\n(?<commands>[\s\S]*?)^```$|^<!-- write: (?<into>\S+) -->\n+```\w+\n(?<text>[\s\S]*?)^```$|<!-- (?<kind>said|file|table|number)(?:: (?<name>[^,\n]+?))?(?:, (?<how>[^\n]+?))? -->(?<old>[\s\S]*?)<!-- end -->/gm;

/** The page with everything made anew. */
export async function filled(page: string, text: string, fillings: Fillings): Promise<string> {
  const wrong = (what: string): Error => new Error(`${page}: ${what}`);
  let done = '';
  let at = 0;
  /** The number of the plan that was told last: who books a plan types that one. */
  let plan: string | undefined;
  let last: { readonly said: Said; readonly commands: string } | undefined;
  const settle = (exit = 0): void => {
    if (last !== undefined && last.said.code !== exit)
      throw wrong(`this ends with ${last.said.code} instead of ${exit}:\n${last.commands}${last.said.text}`);
    last = undefined;
  };
  for (const match of text.matchAll(PART)) {
    const { commands, into, text: block, kind, name = '', how = '' } = match.groups!;
    done += text.slice(at, match.index);
    at = match.index + match[0].length;
    if (kind !== 'said') settle();
    if (commands !== undefined) {
      const typed = commands.replaceAll(/(?<=--cut )\d{4}-\d{4}/g, (old) => plan ?? old);
      last = { said: await fillings.terminal.run(typed), commands: typed };
      plan = /^plan (\d{4}-\d{4})/m.exec(last.said.text)?.[1] ?? plan;
      done += match[0].replace(commands, () => typed);
    } else if (into !== undefined) {
      await fillings.terminal.write(into, block!);
      done += match[0];
    } else {
      const open = match[0].slice(0, match[0].indexOf('-->') + 3);
      const said = last?.said.text;
      if (kind === 'said') {
        if (said === undefined) throw wrong(`no commands stand above ${open}`);
        settle(Number(/exit (\d+)/.exec(how)?.[1] ?? 0));
      }
      done += `${open}${await made(kind!, name, how, said ?? '', fillings)}<!-- end -->`;
    }
  }
  settle();
  const rest = done + text.slice(at);
  const stray = /^<!-- number/m.exec(rest) ?? /<!-- (?!said|file|table|number|write|end)[^>]*-->/.exec(rest);
  if (stray !== null)
    throw wrong(`${stray[0]}: no line begins with a number, and there is no other mark than those of the guide`);
  return rest;
}

async function made(kind: string, name: string, how: string, said: string, fillings: Fillings): Promise<string> {
  switch (kind) {
    case 'said':
      return fenced('text', firstLines(said, how));
    case 'file':
      return fenced(
        name.endsWith('.yaml') ? 'yaml' : 'text',
        fromLine((await fillings.terminal.read(name)).toString(), how),
      );
    case 'table':
      return `\n${fillings.table(name)}\n`;
    case 'number':
      return fillings.number(name);
    default:
      throw new Error(`${kind} is no mark of the guide`);
  }
}

const fenced = (language: string, text: string): string => `\n\`\`\`${language}\n${text.trimEnd()}\n\`\`\`\n`;

function firstLines(text: string, how: string): string {
  const count = /first (\d+)/.exec(how)?.[1];
  if (count === undefined) return text;
  const lines = text.trimEnd().split('\n');
  return lines.length <= Number(count) ? text : [...lines.slice(0, Number(count)), '…'].join('\n');
}

function fromLine(text: string, how: string): string {
  const key = /^from (.+)$/.exec(how)?.[1];
  if (key === undefined) return text;
  const lines = text.split('\n');
  const at = lines.findIndex((line) => line.startsWith(key));
  if (at < 0) throw new Error(`no line of the file starts with ${key}`);
  return lines.slice(at).join('\n');
}
