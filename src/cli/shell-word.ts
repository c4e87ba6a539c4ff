/** A file's name as a shell takes it, whatever signs are in it. */
export function shellWord(word: string): string {
  if (/^[\w./-]+$/u.test(word)) return word;
  return /[$`"\\!\n]/u.test(word) ? `'${word.replaceAll("'", `'\\''`)}'` : JSON.stringify(word);
}
