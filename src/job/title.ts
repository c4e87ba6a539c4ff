import { expression } from '../problems/expression.ts';

const LONGEST = 100;
const invisible = expression(String.raw`[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]`, 'gu');

/** What a job without a title is called: the base name of its file, `jobs/heron.yaml` being heron. */
export function titleFrom(file: string): string {
  const base = file.split(/[/\\]/).at(-1) ?? '';
  const name = base.replace(/\.(?:ya?ml|json)$/i, '').replace(invisible(), ' ');
  return [...name.trim()].slice(0, LONGEST).join('') || 'job';
}
