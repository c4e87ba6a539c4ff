import type { Item } from '../drawing/model.ts';
import { pathLength } from '../geometry/measure.ts';
import type { Size } from '../geometry/point.ts';
import { defined } from '../problems/defined.ts';
import type { Machine } from '../shop/machine.ts';
import { OPERATIONS } from '../shop/operation.ts';
import { printDecimal } from '../units/print.ts';
import { cautions } from './cautions.ts';
import { cutDrawing } from './drawing.ts';
import type { CutFile, CutRecord, LaidBoard, OperationRecord, SightChange, Toolpath } from './model.ts';
import { inOrder, type Time, timeOf } from './toolpaths/sequence.ts';

export interface About {
  readonly title: string;
  /** What is cut, for the summary. */
  readonly about: string;
  readonly notes: readonly Item[];
  readonly boards: readonly LaidBoard[];
  readonly sight: readonly SightChange[];
  readonly allowances: readonly string[];
}

const sideUp = ({ up }: Machine): string => (up === 'back' ? 'BACK of the board up' : 'FACE of the board up');

/** Toolpaths put in order and drawn, with everything that is said of them. */
export function describedFile(
  name: string,
  machine: Machine,
  size: Size,
  given: readonly Toolpath[],
  { title, about, notes, boards, sight, allowances }: About,
): CutFile {
  const origin = { x: 0, y: size.height };
  const toolpaths = inOrder(given, origin);
  const time = timeOf(toolpaths, machine, origin);
  const operations = operationRecords(toolpaths, machine, time);
  const said = cautions(machine.kind);
  const record: CutRecord = {
    file: name,
    machine: machine.id,
    kind: machine.kind,
    up: machine.up,
    ...size,
    boards: boards.map((board) => ({
      layer: board.layer,
      name: board.name,
      board: board.board.id,
      thickness: board.board.thickness,
      ...board.at,
      ...board.size,
      turned: board.turned,
    })),
    operations,
    travel: time.travel,
    seconds: time.total,
    allowances,
    sight,
    cautions: said,
    summary: `${about}: ${operations.map(operationWords).join(', ')}; ${timeWords(time.total)}`,
  };
  const [width, height] = [size.width, size.height].map((side) => printDecimal(side, 'mm', 3).text);
  const words = [title, `${sideUp(machine)}. Size ${width} x ${height} mm at full scale`, ...allowances, ...said];
  const drawing = cutDrawing(title, size, machine, toolpaths, machine.notes ? notes : []);
  return { name, machine, toolpaths, drawing, words, record };
}

function operationRecords(toolpaths: readonly Toolpath[], machine: Machine, time: Time): readonly OperationRecord[] {
  return OPERATIONS.flatMap((operation): OperationRecord[] => {
    const own = toolpaths.filter((each) => each.operation === operation);
    if (own.length === 0) return [];
    const { layer, colour } = machine.operations[operation];
    const tilts = own.flatMap(({ tilt }) => tilt ?? []);
    const told = tilts.filter(
      (tilt, i) => tilts.findIndex((other) => other.angle === tilt.angle && other.lean === tilt.lean) === i,
    );
    return [
      {
        operation,
        layer,
        colour,
        paths: own.length,
        closed: own.filter(({ path }) => path.closed).length,
        length: own.reduce((sum, { path }) => sum + pathLength(path), 0),
        seconds: time.cutting.get(operation) ?? null,
        ...defined({ tilts: told.length === 0 ? undefined : told }),
      },
    ];
  });
}

function operationWords({ operation, paths, closed, length }: OperationRecord): string {
  const kind = closed === paths ? 'closed' : closed === 0 ? 'open' : `${closed} of them closed`;
  const meters = printDecimal(length / 1000, 'mm', 2).text;
  return `${operation} ${paths} ${paths === 1 ? 'path' : 'paths'} (${kind}) of ${meters} m`;
}

function timeWords(seconds: number | null): string {
  if (seconds === null) return 'time not known without speeds of the machine';
  const whole = Math.round(seconds);
  const minutes = Math.floor(whole / 60);
  return `about ${minutes > 0 ? `${minutes} min ` : ''}${whole - 60 * minutes} s`;
}
