import { couponFile } from './cutfiles/coupons/coupon.ts';
import { type CutOptions, cutFiles } from './cutfiles/cut-file.ts';
import { findMachine } from './cutfiles/find-machine.ts';
import type { CutFile, CutRecord } from './cutfiles/model.ts';
import { loadFonts } from './fonts/load.ts';
import type { Fonts } from './fonts/model.ts';
import type { Job } from './job/job.ts';
import type { Mat } from './mat/model.ts';
import { nearest } from './problems/nearest.ts';
import { error, fail, type Problem, type Result, succeed } from './problems/problem.ts';
import { CUT_FORMATS, type CutFormat, DIALECTS, type Dialect, type Machine } from './shop/machine.ts';
import type { Shop } from './shop/shop.ts';
import { DXF_DIALECTS, type DxfDialect } from './writers/dxf.ts';
import { type DrawingFormat, FORMATS, findFormat, type WriteOptions } from './writers/formats.ts';

/** What a file for a machine is asked for; what is left out the machine says. */
export interface CutWishes extends CutOptions {
  /** A machine of the shop, or a kind of machine. */
  readonly machine?: string;
  readonly format?: string;
  /** Of DXF. */
  readonly dialect?: string;
  /** The small piece that shows what the machine makes of its file, instead of the mat. */
  readonly coupon?: boolean;
}

export interface CutMade {
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
  readonly records: readonly CutRecord[];
}

/** The bytes of every file that a machine needs for a mat, and what is in them. */
export async function makeCutFiles(
  { job, mat, shop }: { readonly job: Job; readonly mat: Mat; readonly shop: Shop },
  wishes: CutWishes,
): Promise<Result<CutMade>> {
  const machine = findMachine(shop, wishes.machine);
  const format = formatOf(wishes.format, machine.ok ? machine.value : undefined);
  const dialect = dialectOf(wishes.dialect, machine.ok ? machine.value : undefined);
  const problems = [machine, format, dialect].flatMap((each) => (each.ok ? [] : each.problems));
  if (!machine.ok || !format.ok || !dialect.ok || problems.length > 0) return fail(problems);
  const fonts = await loadFonts([job.title, ...mat.layers.map(({ board }) => board.name)], { outlines: true });
  const cut =
    wishes.coupon === true
      ? couponFile(job, mat, machine.value, fonts)
      : cutFiles(job, mat, machine.value, fonts, wishes);
  if (!cut.ok) return cut;
  const write = await format.value.load();
  const made = cut.value.map((file) => ({
    name: `${file.name}.${format.value.extension}`,
    bytes: write(file.drawing, writeOptions(file, dialect.value, fonts)),
    record: file.record,
  }));
  return succeed(
    {
      files: made.map(({ name, bytes }) => ({ name, bytes })),
      records: made.map(({ name, record }) => ({ ...record, file: name })),
    },
    [...machine.warnings, ...cut.warnings],
  );
}

const isCut = (format: { readonly id: string }): boolean => CUT_FORMATS.some((id) => id === format.id);

function formatOf(asked: string | undefined, machine: Machine | undefined): Result<DrawingFormat> {
  const formats = FORMATS.filter((format): format is DrawingFormat => format.of === 'drawing' && isCut(format));
  const fallback: CutFormat = machine?.format ?? 'svg';
  return findFormat(asked ?? fallback, formats);
}

function dialectOf(asked: string | undefined, machine: Machine | undefined): Result<DxfDialect> {
  const fallback: Dialect = machine?.dialect ?? 'r12';
  const found = DIALECTS.find((id) => id === (asked ?? fallback).toLowerCase());
  return found === undefined ? fail([unknownDialect(asked ?? '')]) : succeed(found);
}

function unknownDialect(asked: string): Problem {
  const near = nearest(asked, DXF_DIALECTS);
  const known = `known: ${DXF_DIALECTS.join(', ')}`;
  const hint = near === undefined ? known : `did you mean ${near}? ${known}`;
  return error('dialect-unknown', [], `there is no dialect of DXF called ${JSON.stringify(asked)} here`, hint);
}

function writeOptions({ machine, words }: CutFile, dialect: DxfDialect, fonts: Fonts): WriteOptions {
  const { operations, sendSpeeds } = machine;
  const pens = Object.fromEntries(
    Object.entries(operations).map(([name, { pen, speed }]) => [
      name,
      { number: pen, ...(sendSpeeds && speed !== undefined ? { speed } : {}) },
    ]),
  );
  return {
    fonts,
    comment: words,
    tolerance: machine.tolerance,
    dialect,
    plotter: { pens, scale: machine.scale, origin: machine.origin, comments: machine.comments },
  };
}
