import type { Print } from '../files/made.ts';

/** The first line in which two texts differ, as it is now. */
export function changedLine(before: string, after: string): string | undefined {
  const [old, now] = [before, after].map((text) => text.split(/\r?\n/u));
  const at = now!.findIndex((line, i) => line !== old![i]);
  if (at === -1) return old!.length === now!.length ? undefined : `line ${now!.length + 1} is gone`;
  return `line ${at + 1}: ${now![at]!.trim()}`;
}

/** Names of files that are new, or hold something else. */
export function changedFiles(before: readonly Print[], after: readonly Print[]): readonly string[] {
  const known = new Map(before.map(({ name, sha256 }) => [name, sha256]));
  return after.filter(({ name, sha256 }) => known.get(name) !== sha256).map(({ name }) => name);
}
