import { pathLength } from '../geometry/measure.ts';
import type { Size } from '../geometry/point.ts';
import { type Machine, OPERATIONS } from '../job/machine-model.ts';
import type { Job } from '../job/model.ts';
import type { Mat } from '../mat/model.ts';
import { solve } from '../mat/solve.ts';
import { error, fail, type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import { printDecimal, showLength, showSize } from '../units/print.ts';
import { type Bed, oneEach, type Room, together } from './bed.ts';
import { laidBoard } from './boards.ts';
import { cautions } from './cautions.ts';
import { cutDrawing, cutNotes } from './drawing.ts';
import { cutOnce } from './join.ts';
import { workOf } from './kinds.ts';
import type { CutFile, CutJob, CutRecord, LaidBoard, OperationRecord, SightChange, Toolpath } from './model.ts';
import { targets } from './registration.ts';
import { inOrder, timeOf } from './sequence.ts';
import { sightChanges } from './square.ts';

export interface CutOptions {
  /** All blanks on as few beds as they take, instead of a file for each layer. */
  readonly together?: boolean;
  /** Blanks a quarter turn clockwise from how they hang. */
  readonly turn?: boolean;
}

/**
 * The files that a machine needs to cut a mat, each with its toolpaths in their order. `asked` is the mat as the job has
 * it; a machine that makes no bevels gets the job solved again. Problems have paths into the job.
 */
export function cutFiles(job: Job, asked: Mat, machine: Machine, options: CutOptions = {}): Result<readonly CutFile[]> {
  const work = workOf(machine);
  const prepared = work.prepare(job);
  if (!prepared.ok) return prepared;
  const solved = solve(prepared.value);
  if (!solved.ok) return solved;
  const cut: CutJob = { job: prepared.value, mat: solved.value };
  const refused = [...tooThick(cut.mat, machine), ...noWaste(machine)];
  const gap = machine.outside ? Math.max(machine.gap, work.leastGap) : machine.gap;
  const room: Room = {
    edge: machine.outside ? work.reach : 0,
    apart: machine.outside
      ? { width: gap + work.width.width, height: gap + work.width.height }
      : { width: gap, height: gap },
  };
  const blanks = cut.mat.layers.map(({ blank, name }, i) => ({ layer: i + 1, name, size: blank }));
  const beds = options.together
    ? together(blanks, machine, room, job.units)
    : oneEach(blanks, machine, room, options.turn === true, job.units);
  if (!beds.ok || refused.length > 0) return fail([...refused, ...(beds.ok ? [] : beds.problems)]);
  const warnings: Problem[] = [];
  const problems: Problem[] = [];
  if (options.together && gap > machine.gap) warnings.push(gapWidened(machine, gap));
  const sight = sightChanges(asked, cut.mat);
  const files = beds.value.flatMap((bed, i) => {
    const boards = bed.placings.map(({ layer, at, turned }) => laidBoard(cut.mat, layer, machine.up, at, turned));
    const found = boards.map((board) => work.toolpaths(board, cut));
    for (const each of found) (each.ok ? warnings : problems).push(...(each.ok ? each.warnings : each.problems));
    const toolpaths = [
      ...(machine.kind === 'knife' && machine.registration !== undefined
        ? targets(boards, work.targetsBeyond, machine.registration)
        : []),
      ...onceEach(found.flatMap((each) => (each.ok ? each.value : []))),
    ];
    return [cutFile(`cut-${machine.id}-${i + 1}`, cut, machine, bed, boards, toolpaths, sight, work.allowances(cut))];
  });
  return problems.length > 0 ? fail(problems) : succeed(files, [...sightWarnings(sight, machine, job), ...warnings]);
}

/** Outsides that neighbours share are cut once; all else is never alike. */
function onceEach(toolpaths: readonly Toolpath[]): readonly Toolpath[] {
  const outer = toolpaths.filter(({ operation, reversible }) => operation === 'outer' && reversible);
  const paths = outer.map(({ path }) => path);
  const once = cutOnce(paths);
  if (once.length === paths.length && once.every((path) => paths.includes(path))) return toolpaths;
  const shared = once.map((path, i): Toolpath => {
    const own = outer.find((each) => each.path === path);
    return own ?? { operation: 'outer', path, id: `outside-shared-${i + 1}`, reversible: true };
  });
  return [...toolpaths.filter((each) => !outer.includes(each)), ...shared];
}

function cutFile(
  name: string,
  cut: CutJob,
  machine: Machine,
  bed: Bed,
  boards: readonly LaidBoard[],
  given: readonly Toolpath[],
  sight: readonly SightChange[],
  allowances: readonly string[],
): CutFile {
  const size: Size = { width: bed.width, height: bed.height };
  const origin = { x: 0, y: size.height };
  const toolpaths = inOrder(given, origin);
  const layers = boards.map((board) => board.name).join(', ');
  const title = `${cut.job.title}: ${layers}, for ${machine.id}`;
  const sideUp = machine.up === 'back' ? 'BACK of the board up' : 'FACE of the board up';
  const said = cautions(machine.kind);
  const boardWords = (board: LaidBoard): readonly string[] => [
    `${cut.job.title}: ${board.name}, ${board.board.name} ${showLength(board.board.thickness, 'mm')}`,
    `${sideUp}, blank ${showSize(board.size, 'mm')}${board.turned ? ', turned a quarter' : ''}`,
    ...allowances,
    'these words and the 100 mm line are not cut',
  ];
  const drawing = cutDrawing(title, size, machine, toolpaths, cutNotes(boards, machine, boardWords));
  const time = timeOf(toolpaths, machine, origin);
  const operations = OPERATIONS.flatMap((operation): OperationRecord[] => {
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
        ...(told.length === 0 ? {} : { tilts: told }),
      },
    ];
  });
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
    summary: `${layers}: ${operations.map(operationWords).join(', ')}; ${timeWords(time.total)}`,
  };
  const words = [
    title,
    `${sideUp}. Size ${printDecimal(size.width, 'mm', 3).text} x ${printDecimal(size.height, 'mm', 3).text} mm at full scale`,
    ...allowances,
    ...said,
  ];
  return { name, machine, toolpaths, drawing, words, record };
}

function operationWords({ operation, paths, closed, length }: OperationRecord): string {
  const kind = closed === paths ? 'closed' : closed === 0 ? 'open' : `${closed} of them closed`;
  const meters = printDecimal(length / 1000, 'mm', 2).text;
  return `${operation} ${paths} ${paths === 1 ? 'path' : 'paths'} (${kind}) of ${meters} m`;
}

function timeWords(seconds: number | null): string {
  if (seconds === null) return 'time not known without speeds of the machine';
  const minutes = Math.floor(seconds / 60);
  return `about ${minutes > 0 ? `${minutes} min ` : ''}${Math.round(seconds - 60 * minutes)} s`;
}

function tooThick(mat: Mat, { id, thickest }: Machine): readonly Problem[] {
  if (thickest === undefined) return [];
  return mat.layers.flatMap(({ name, board }, i) =>
    board.thickness <= thickest + 1e-9
      ? []
      : [
          error(
            'machine-board-thick',
            ['mat', 'layers', i, 'board'],
            `the ${name} is ${showLength(board.thickness, 'mm')} thick, ${id} cuts ${showLength(thickest, 'mm')} at most`,
            'take a thinner board or another machine; is thickest right in the shop’s file?',
          ),
        ],
  );
}

/** Targets lie around what is cut out; around a board that is trimmed already there is nothing to print on. */
function noWaste(machine: Machine): readonly Problem[] {
  if (machine.kind !== 'knife' || machine.registration === undefined || machine.outside) return [];
  const message = `${machine.id} looks for printed targets, but its boards are trimmed before`;
  return [error('registration-no-waste', [], message, 'take registration out, or let the machine cut the outside')];
}

function gapWidened(machine: Machine, gap: number): Problem {
  const message = `blanks lie ${showLength(gap, 'mm')} apart, so that the tool comes in from the waste between them`;
  return warning('gap-widened', [], message, `${machine.id} has a gap of ${showLength(machine.gap, 'mm')}`);
}

function sightWarnings(changes: readonly SightChange[], machine: Machine, job: Job): readonly Problem[] {
  return changes.map(({ opening, job: asked, cut }) =>
    warning(
      'sight-square',
      ['openings'],
      `${machine.id} cuts square: ${opening} shows ${showSize(cut, job.units)}, with the job’s own bevels ${showSize(asked, job.units)}`,
      'give the layers bevel: 90 and look at the overlap and the reveals again',
    ),
  );
}
