import type { Command } from 'commander';
import type { BenchSheetWishes } from '../../index.ts';
import { parseLength } from '../../units/parse.ts';
import { type SheetOptions, sheetOptions, writeSheets } from '../bench-sheet.ts';
import { UsageError } from '../usage.ts';

interface Options extends SheetOptions {
  readonly number?: string;
  readonly rows?: string;
  readonly columns?: string;
  readonly gap?: string;
  readonly margin?: string;
  readonly skip?: string;
}

export function define(command: Command): void {
  sheetOptions(
    command
      .argument('<job...>', 'job files, YAML or JSON')
      .option('--number <number>', 'of the first job, as the shop counts: 41, A-07; the others count on')
      .option('--rows <count>', 'labels below each other (default: 8)')
      .option('--columns <count>', 'labels side by side (default: 3)')
      .option('--gap <lengths>', 'between columns, and between rows after a comma: "3 mm, 0 mm"; bare numbers are mm')
      .option('--margin <lengths>', 'at the sides, and above and below after a comma: "7 mm, 13 mm"')
      .option('--skip <count>', 'labels of the first sheet that are used already'),
  )
    .addHelpText(
      'after',
      '\nExample:\n  matwright labels examples/heron/job.yaml --rows 8 --columns 3 --gap "3 mm, 0 mm" --skip 4\n',
    )
    .action(labels);
}

async function labels(files: readonly string[], options: Options): Promise<void> {
  const { number, rows, columns, skip } = options;
  const gap = lengths('--gap', options.gap);
  const margin = lengths('--margin', options.margin);
  const grid: BenchSheetWishes['grid'] = {
    ...(rows === undefined ? {} : { rows: whole('--rows', rows, 1) }),
    ...(columns === undefined ? {} : { columns: whole('--columns', columns, 1) }),
    ...(skip === undefined ? {} : { skip: whole('--skip', skip, 0) }),
    ...(gap === undefined ? {} : { gapX: gap[0], gapY: gap[1] }),
    ...(margin === undefined ? {} : { marginX: margin[0], marginY: margin[1] }),
  };
  return writeSheets('labels', files, options, { ...(number === undefined ? {} : { number }), grid });
}

/** More labels than this lie on no sheet that can be bought. */
const MOST = 60;

function whole(option: string, text: string, least: number): number {
  const value = Number(text);
  if (/^\d{1,3}$/u.test(text) && value >= least && value <= MOST) return value;
  throw new UsageError(`${option} ${text}: give a whole number from ${least} to ${MOST}`);
}

function lengths(option: string, text: string | undefined): readonly [number, number] | undefined {
  if (text === undefined) return undefined;
  const parts = text.split(',').map((part) => parseLength(part, 'mm'));
  for (const part of parts) if (!part.ok) throw new UsageError(`${option} ${text}: ${part.message}; ${part.hint}`);
  const [first, second = first] = parts.flatMap((part) => (part.ok ? [part.value] : []));
  if (parts.length > 2 || first === undefined || second === undefined || first < 0 || second < 0) {
    throw new UsageError(`${option} ${text}: give one length, or two with a comma between them`);
  }
  return [first, second];
}
