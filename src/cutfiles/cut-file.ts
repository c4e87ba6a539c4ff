import type { Fonts } from '../fonts/model.ts';
import type { Job } from '../job/job.ts';
import { theNamed } from '../mat/layers.ts';
import type { Mat } from '../mat/model.ts';
import { solve } from '../mat/solve.ts';
import { error, fail, type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import type { Machine } from '../shop/machine.ts';
import { showLength, showSize } from '../units/print.ts';
import { type Bed, type Blank, oneEach, type Room, together } from './bed.ts';
import { standsUpright } from './bevel.ts';
import { laidBoard } from './boards.ts';
import { describedFile } from './described.ts';
import { blankNotes, cutDrawing, cutNotes } from './drawing.ts';
import { drawsInk, inkLines } from './ink.ts';
import { workOf } from './kinds.ts';
import type { CutFile, CutJob, LaidBoard, SightChange, Toolpath } from './model.ts';
import { targets } from './registration.ts';
import { sightChanges } from './square.ts';
import { cutOnce } from './toolpaths/join.ts';

export interface CutOptions {
  /** All blanks on as few beds as they take, instead of a file for each layer. */
  readonly together?: boolean;
  /** Blanks a quarter turn clockwise from how they hang. */
  readonly turn?: boolean;
}

/**
 * The files that a machine needs to cut a mat, each with its toolpaths in their order. `own` is the mat as the job has
 * it; a machine that makes no bevels gets the job solved again. The fonts have outlines. Problems have paths into the job.
 */
export function cutFiles(
  job: Job,
  own: Mat,
  machine: Machine,
  fonts: Fonts,
  options: CutOptions = {},
): Result<readonly CutFile[]> {
  const work = workOf(machine);
  const prepared = work.prepare(job);
  if (!prepared.ok) return prepared;
  const solved = solve(prepared.value, { fonts });
  if (!solved.ok) return solved;
  const cut: CutJob = { job: prepared.value, mat: solved.value, fonts };
  const refused = [...tooThick(cut.mat, machine), ...noWaste(machine)];
  const gap = machine.outside ? Math.max(machine.gap, work.leastGap) : machine.gap;
  const room: Room = {
    edge: machine.outside ? work.reach : 0,
    apart: machine.outside
      ? { width: gap + work.width.width, height: gap + work.width.height }
      : { width: gap, height: gap },
  };
  const all = cut.mat.layers.map(({ blank, name }, i) => ({ layer: i + 1, name, size: blank }));
  const blanks = all.filter(({ layer }) => !cutAlready(cut.mat, layer));
  const beds = options.together
    ? together(blanks, machine, room, job.units)
    : oneEach(blanks, machine, room, options.turn === true, job.units);
  if (!beds.ok || refused.length > 0) return fail([...refused, ...(beds.ok ? [] : beds.problems)]);
  const warnings: Problem[] = [...byHand(job, machine), ...leftOut(all, blanks)];
  const problems: Problem[] = [];
  if (options.together && blanks.length > 1 && gap > machine.gap) warnings.push(gapWidened(machine, gap));
  const sight = sightChanges(own, cut.mat);
  const files = beds.value.flatMap((bed, i) => {
    const boards = bed.placings.map(({ layer, at, turned }) => laidBoard(cut.mat, layer, machine.up, at, turned));
    const found = boards.map((board) => work.toolpaths(board, cut));
    for (const each of found) (each.ok ? warnings : problems).push(...(each.ok ? each.warnings : each.problems));
    const toolpaths = [
      ...(machine.kind === 'knife' && machine.registration !== undefined
        ? targets(boards, work.targetsBeyond, machine.registration)
        : []),
      ...boards.flatMap((board) => inkLines(board, cut, machine)),
      ...onceEach(found.flatMap((each) => (each.ok ? each.value : []))),
    ];
    const number = options.together ? i + 1 : bed.placings[0]!.layer;
    return [cutFile(`cut-${machine.id}-${number}`, cut, machine, bed, boards, toolpaths, sight, work.allowances(cut))];
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
  toolpaths: readonly Toolpath[],
  sight: readonly SightChange[],
  allowances: readonly string[],
): CutFile {
  const layers = boards.map((board) => board.name).join(', ');
  const words = (board: LaidBoard): readonly string[] => [
    `${cut.job.title}: ${board.name}`,
    `${board.board.name} ${showLength(board.board.thickness, 'mm')}, ${showSize(board.size, 'mm')}`,
    `${machine.up.toUpperCase()} UP${board.turned ? ', turned a quarter, TOP to the right' : ''}`,
  ];
  const title = `${cut.job.title}: ${layers}, for ${machine.id}`;
  const size = { width: bed.width, height: bed.height };
  const said = cutNotes(boards, words, cut.fonts);
  const lie = blankNotes(boards, cut.fonts);
  const file = describedFile(name, machine, size, toolpaths, {
    title,
    about: layers,
    // What is cut out of a sheet shows by its own cut where it lies.
    notes: machine.outside ? said : [...said, ...lie],
    boards,
    sight,
    allowances,
  });
  return { ...file, bed: cutDrawing(title, size, machine, file.toolpaths, [...said, ...lie]) };
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
            `${theNamed(name)} is ${showLength(board.thickness, 'mm')} thick, ${id} cuts ${showLength(thickest, 'mm')} at most`,
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

/** True where every opening of a layer is cut: then its outside is, too. */
const cutAlready = (mat: Mat, layer: number): boolean =>
  mat.openings.every((opening) => opening.layers[layer - 1]!.cut === true);

function leftOut(all: readonly Blank[], blanks: readonly Blank[]): readonly Problem[] {
  return all
    .filter((blank) => !blanks.includes(blank))
    .map(({ layer, name }) =>
      warning(
        'layer-cut-already',
        ['mat', 'layers', layer - 1],
        `${theNamed(name)} is cut already and has no file`,
        '',
      ),
    );
}

/** Grooves belong on the face, before or after the machine's work; so do ink lines where it sees the back. */
function byHand(job: Job, machine: Machine): readonly Problem[] {
  const { id } = machine;
  const slanted = machine.kind === 'bevel' && !standsUpright(machine);
  const letters = (slanted ? (job.lettering ?? []) : []).flatMap(({ text, edge }, i) =>
    edge === 'bevel'
      ? []
      : [
          warning(
            'lettering-by-hand',
            ['lettering', i],
            `${id} cannot cut upright: the lettering ${text} is not in its file`,
            'cut it by the pattern, or on another machine',
          ),
        ],
  );
  const lines = job.openings.flatMap(({ decor = [] }, i) => {
    const has = (kind: string): boolean => decor.some((each) => each.kind === kind);
    const ink = has('ink') && !drawsInk(machine);
    const left = [...(has('groove') ? ['grooves'] : []), ...(ink ? ['ink lines'] : [])];
    if (left.length === 0) return [];
    const message = `the ${left.join(' and ')} of this opening are not in the file for ${id}`;
    const turned = ink && drawsInk({ ...machine, up: 'face' });
    const hint = turned
      ? 'lay them out by the pattern; with up: face the machine draws ink lines'
      : 'lay them out by the pattern';
    return [warning('decor-by-hand', ['openings', i], message, hint)];
  });
  return [...lines, ...letters];
}

function gapWidened(machine: Machine, gap: number): Problem {
  const message = `blanks lie ${showLength(gap, 'mm')} apart, so that the tool comes in from the waste between them`;
  return warning('gap-widened', [], message, `${machine.id} has a gap of ${showLength(machine.gap, 'mm')}`);
}

/** All openings at once: they change by the same. */
function sightWarnings(changes: readonly SightChange[], machine: Machine, job: Job): readonly Problem[] {
  if (changes.length === 0) return [];
  const shown = changes.map(
    ({ opening, job: own, cut }) =>
      `${opening} shows ${showSize(cut, job.units)}, with the job’s own bevels ${showSize(own, job.units)}`,
  );
  const hint = 'give the layers bevel: 90 and look at the overlap and the reveals again';
  return [warning('sight-square', ['openings'], `${machine.id} cuts square: ${shown.join('; ')}`, hint)];
}
