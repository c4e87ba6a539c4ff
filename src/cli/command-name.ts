/** The command that arguments ask for, or whose help they ask for; the launcher picks a bundle by the same word. */
export function commandName(args: readonly string[]): string | undefined {
  const [first, second] = args.filter((arg) => !arg.startsWith('-'));
  return first === 'help' ? second : first;
}
