import { compared, MOST_BYTES, packed, unpacked } from './pictures.ts';

/** Outputs or references of one case: bytes by file name. Names ending in `.png` are compared as pictures. */
export type Outputs = ReadonlyMap<string, Uint8Array>;

export interface Failure {
  readonly case: string;
  readonly file: string;
  readonly kind: 'missing' | 'different' | 'orphan' | 'duplicate' | 'heavy';
  /** What to look for: the first line that differs, or how many pixels do. */
  readonly detail: string;
  readonly expected?: Uint8Array;
  readonly actual?: Uint8Array;
  readonly difference?: Uint8Array;
}

const decode = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, i) => byte === b[i]);
}

/** `line 12: expected …, got …`. */
function firstDifference(expected: string, actual: string): string {
  const [want, got] = [expected.split('\n'), actual.split('\n')];
  const at = want.findIndex((line, i) => line !== got[i]);
  const line = at < 0 ? want.length : at;
  const shown = (text: string | undefined): string => (text === undefined ? 'nothing' : text.trim().slice(0, 200));
  return `line ${line + 1}: expected ${shown(want[line])}, got ${shown(got[line])}`;
}

function differenceOf(file: string, expected: Uint8Array, actual: Uint8Array): Partial<Failure> | undefined {
  if (sameBytes(expected, actual)) return undefined;
  if (!file.endsWith('.png')) return { detail: firstDifference(decode(expected), decode(actual)) };
  const [want, got] = [unpacked(expected), unpacked(actual)];
  const comparison = compared(want, got);
  if (comparison === undefined)
    return { detail: `${want.width} × ${want.height} pixels expected, ${got.width} × ${got.height} made` };
  if (comparison.pixels === 0) return undefined;
  return { detail: `${comparison.pixels} pixels differ`, difference: packed(comparison.difference) };
}

/** Everything in which what was made departs from the references of the case. */
export function compareCase(name: string, references: Outputs, made: Outputs): Failure[] {
  const failures: Failure[] = [];
  for (const [file, actual] of made) {
    const expected = references.get(file);
    if (file.endsWith('.png') && actual.length > MOST_BYTES) {
      const detail = `${actual.length} bytes, ${MOST_BYTES} allowed: render it smaller`;
      failures.push({ case: name, file, kind: 'heavy', detail, actual });
      continue;
    }
    if (expected === undefined) {
      failures.push({ case: name, file, kind: 'missing', detail: 'has no reference', actual });
      continue;
    }
    const difference = differenceOf(file, expected, actual);
    if (difference !== undefined)
      failures.push({ case: name, file, kind: 'different', detail: '', ...difference, expected, actual });
  }
  for (const [file, expected] of references) {
    if (!made.has(file))
      failures.push({ case: name, file, kind: 'orphan', detail: 'is a reference that nothing makes', expected });
  }
  return failures;
}

/** Folders of references that no case has, and cases that would share one. */
export function compareNames(names: readonly string[], folders: readonly string[]): Failure[] {
  const seen = new Set<string>();
  const duplicates = names.filter((name) => {
    const key = name.toLowerCase();
    const again = seen.has(key);
    seen.add(key);
    return again;
  });
  return [
    ...duplicates.map((name): Failure => ({ case: name, file: '', kind: 'duplicate', detail: 'is listed twice' })),
    ...folders
      .filter((folder) => !names.includes(folder))
      .map((folder): Failure => ({ case: folder, file: '', kind: 'orphan', detail: 'is a folder of no case' })),
  ];
}

export const showFailure = (failure: Failure): string =>
  `${failure.case}/${failure.file}  ${failure.kind}: ${failure.detail}`;
