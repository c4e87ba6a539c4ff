import { couponFile } from '../../cutfiles/coupons/coupon.ts';
import { cutFiles } from '../../cutfiles/cut-file.ts';
import { findMachine } from '../../cutfiles/find-machine.ts';
import type { CutFile } from '../../cutfiles/model.ts';
import { defined } from '../../problems/defined.ts';
import { nearest } from '../../problems/nearest.ts';
import { error, fail, type Problem, type Result, succeed } from '../../problems/problem.ts';
import { DIALECTS, type Dialect, type Machine } from '../../shop/machine.ts';
import { printDecimal, showSize } from '../../units/print.ts';
import { DXF_DIALECTS, type DxfDialect } from '../../writers/dxf/dxf.ts';
import { FORMATS } from '../../writers/formats.ts';
import type { Draw, DrawnFile } from '../output.ts';
import type { Records } from '../records.ts';

/** The files that a machine needs for a mat, or the coupon that it is measured by. What is left out the machine says. */
export const draw: Draw<Records['cutfile']> = async ({ work, settled }, options) => {
  const { job, mat, shop } = work.jobs[0]!;
  const machine = findMachine(shop, options.machine);
  const dialect = dialectOf(options.dialect, machine.ok ? machine.value : undefined);
  const problems = [machine, dialect].flatMap((each) => (each.ok ? [] : each.problems));
  if (options.together === true && options.turn === true) problems.push(TURNED_TOGETHER);
  if (!machine.ok || !dialect.ok || problems.length > 0) return fail(problems);
  const cut =
    options.coupon === true
      ? couponFile(job, mat, machine.value, settled.fonts)
      : cutFiles(job, mat, machine.value, settled.fonts, options);
  if (!cut.ok) return cut;
  const { id } = machine.value;
  const usual = [machine.value.format];
  const drawingFormats = options.format ?? usual;
  const extension = FORMATS.find((format) => format.id === drawingFormats[0])?.extension ?? '';
  const records = cut.value.map(({ name, record }) => ({ ...record, file: `${name}.${extension}` }));
  const [first] = records;
  const drawn = {
    record: records,
    title: job.title,
    documents: [],
    drawings: cut.value.flatMap((file) => [
      drawnFile(file, dialect.value),
      ...(drawingFormats.includes('hpgl') ? bedSheet(file) : []),
    ]),
    drawingFormats,
    usual,
    beds: records.map(({ width, height }) => ({ machine: id, width, height })),
    notes: [...(first?.allowances ?? []), ...(first?.cautions ?? [])],
    // A coupon is no part of a job: cuts may lie beside it.
    ...(options.coupon === true
      ? {}
      : { family: `^cut-${id.replaceAll('.', '\\.')}-\\d+(?:-bed)?\\.(?:svg|dxf|plt)$` }),
  };
  return succeed(drawn, [...machine.warnings, ...cut.warnings]);
};

function drawnFile(file: CutFile, dialect: DxfDialect): DrawnFile {
  const { name, drawing, record } = file;
  const up = record.up === 'back' ? 'BACK' : 'FACE';
  const size = `${showSize(record, 'mm')} at full scale, ${up} of the board up`;
  return { name, drawing, how: writeOptions(file, dialect), said: record.summary, more: [size, ...whereWords(record)] };
}

/** Where each board lies, counted as the machine counts. */
function whereWords({ boards, height }: CutFile['record']): readonly string[] {
  const mm = (length: number): string => printDecimal(length, 'mm', 2).text;
  return boards.map((board) => {
    const up = height - board.y - board.height;
    const turned = board.turned ? 'turned a quarter clockwise, TOP to the right' : 'TOP up';
    return `${board.name}: ${mm(board.x)} mm from the left of the bed, ${mm(up)} mm from its lower end, ${turned}`;
  });
}

/** A plotter knows no layers and gets no notes: what lies where it is told by a drawing of the bed. */
function bedSheet({ name, bed }: CutFile): readonly DrawnFile[] {
  if (bed === undefined) return [];
  const how = { comment: ['Where the boards lie; not to be cut.'] };
  return [
    { name: `${name}-bed`, drawing: bed, how, formats: ['svg'], said: 'where the boards lie on the bed', more: [] },
  ];
}

const TURNED_TOGETHER = error(
  'turn-together',
  ['options', 'turn'],
  'boards that lie together are turned where that takes less of the bed',
  'leave turn out, or have a file for each board',
);

function dialectOf(name: string | undefined, machine: Machine | undefined): Result<DxfDialect> {
  const fallback: Dialect = machine?.dialect ?? 'r12';
  const found = DIALECTS.find((id) => id === (name ?? fallback).toLowerCase());
  return found === undefined ? fail([unknownDialect(name ?? '')]) : succeed(found);
}

function unknownDialect(name: string): Problem {
  const near = nearest(name, DXF_DIALECTS);
  const known = `known: ${DXF_DIALECTS.join(', ')}`;
  const hint = near === undefined ? known : `did you mean ${near}? ${known}`;
  return error('dialect-unknown', [], `there is no dialect of DXF called ${JSON.stringify(name)} here`, hint);
}

function writeOptions({ machine, words }: CutFile, dialect: DxfDialect): DrawnFile['how'] {
  const { operations, sendSpeeds } = machine;
  const pens = Object.fromEntries(
    Object.entries(operations).map(([name, { pen, speed }]) => [
      name,
      { number: pen, ...defined({ speed: sendSpeeds && speed !== undefined ? speed : undefined }) },
    ]),
  );
  return {
    comment: words,
    tolerance: machine.tolerance,
    dialect,
    plotter: { pens, scale: machine.scale, origin: machine.origin, comments: machine.comments },
  };
}
