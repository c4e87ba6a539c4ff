/** A file's name as a shell takes it. */
export const shellWord = (file: string): string => (/^[\w./-]+$/u.test(file) ? file : JSON.stringify(file));
