/** A line of a block that is typed at a terminal, as far as the guide has need of it. */
export interface CommandLine {
  readonly words: readonly string[];
  /** Where standard output goes instead of to the terminal. */
  readonly into?: string;
}

/** A word, parts of which may stand between quotation marks; a comment takes what is left. */
const TOKEN = /\s*(?:(#.*)$|((?:'[^']*'|"[^"]*"|[^\s'"])+))/y;

/** The commands of a block: lines that end in a backslash go on, comments and empty lines are left out. */
export function commandLines(block: string): readonly CommandLine[] {
  return block
    .replaceAll(/\\\n\s*/g, ' ')
    .split('\n')
    .map(wordsOf)
    .filter((words) => words.length > 0)
    .map(redirected);
}

function wordsOf(line: string): readonly string[] {
  const words: string[] = [];
  TOKEN.lastIndex = 0;
  for (let match = TOKEN.exec(line); match !== null; match = TOKEN.exec(line)) {
    if (match[2] === undefined) break;
    words.push(match[2].replaceAll(/'([^']*)'|"([^"]*)"/g, '$1$2'));
  }
  return words;
}

function redirected(words: readonly string[]): CommandLine {
  const at = words.indexOf('>');
  if (at < 0) return { words };
  const into = words[at + 1];
  if (into === undefined || at + 2 < words.length) throw new Error(`${words.join(' ')}: one file after >`);
  return { words: words.slice(0, at), into };
}
