import type { Drawing, Group, Item, Pen } from '../drawing/model.ts';
import type { Fonts } from '../fonts/model.ts';
import { type Box, centre } from '../geometry/box.ts';
import { pathBox } from '../geometry/extent.ts';
import { placedPath } from '../geometry/path.ts';
import type { Point, Size } from '../geometry/point.ts';
import type { Machine } from '../shop/machine.ts';
import { OPERATIONS, type Operation } from '../shop/operation.ts';
import { lettering } from './letters.ts';
import type { LaidBoard, Toolpath } from './model.ts';

const LABELS: Readonly<Record<Operation, string>> = {
  mark: 'Marks, scored',
  ink: 'Ink lines, drawn',
  registration: 'Registration targets, printed',
  score: 'Light pass',
  inner: 'Openings',
  outer: 'Outside',
  bevel: 'Bevels',
  note: 'Notes, not cut',
};

const LARGEST_NOTE = 4;
const SMALLEST_NOTE = 1;
/** Of the box around an opening: what an oval has room for too. */
const NOTE_SHARE = 0.6;
const REFERENCE = 100;
/** From base line to base line, em. */
export const LEADING = 1.4;

/** Toolpaths in their order as a drawing: a group for each operation, named by the layer that the machine expects. */
export function cutDrawing(
  title: string,
  size: Size,
  machine: Machine,
  toolpaths: readonly Toolpath[],
  notes: readonly Item[],
): Drawing {
  const groups: Group[] = [];
  let last: Operation | undefined;
  let items: Item[] = [];
  for (const { operation, path, id } of toolpaths) {
    if (operation !== last) {
      items = [];
      groups.push({ name: machine.operations[operation].layer, label: LABELS[operation], shown: true, items });
      last = operation;
    }
    items.push({ kind: 'path', pen: operation, paths: [path], id });
  }
  if (notes.length > 0)
    groups.push({ name: machine.operations.note.layer, label: LABELS.note, shown: true, items: notes });
  return { title, ...size, view: machine.up, pens: pensOf(machine), groups };
}

function pensOf(machine: Machine): Drawing['pens'] {
  const pen = (name: Operation): Pen => ({
    width: machine.line,
    colour: machine.operations[name].colour,
    dash: [],
    cap: 'round',
  });
  return Object.fromEntries(OPERATIONS.map((name) => [name, pen(name)]));
}

/**
 * What the file says for itself, in the fallout of each board: never cut, so it may lie where the waste is. The first
 * board also has a line of 100 mm, where its opening has room for one, to measure what the machine makes of it.
 */
export function cutNotes(
  boards: readonly LaidBoard[],
  words: (board: LaidBoard) => readonly string[],
  fonts: Fonts,
): readonly Item[] {
  return boards.flatMap((board, i) => {
    const room = largest(board.openings.map(({ back }) => pathBox(back)));
    if (room === undefined) return [];
    const lines = words(board);
    const wide = NOTE_SHARE * room.width;
    const reference = i === 0 && wide >= REFERENCE;
    const most = Math.max(...lines.map((line) => lettering(line, 1, fonts).width));
    const size = Math.min(LARGEST_NOTE, wide / most, (NOTE_SHARE * room.height) / (LEADING * lines.length + 3));
    if (size < SMALLEST_NOTE) return [];
    const middle = centre(room);
    const shift = { x: middle.x - (most * size) / 2, y: middle.y - (LEADING * size * lines.length) / 2 };
    const texts = noteLines(lines, size, shift, `words-${board.layer}`, fonts);
    if (!reference) return texts;
    const y = shift.y + LEADING * size * lines.length + 2 * size;
    const [from, to] = [middle.x - REFERENCE / 2, middle.x + REFERENCE / 2];
    const line = (x0: number, y0: number, x1: number, y1: number, id: string): Item => ({
      kind: 'line',
      pen: 'note',
      from: { x: x0, y: y0 },
      to: { x: x1, y: y1 },
      id,
    });
    return [
      ...texts,
      line(from, y, to, y, 'reference'),
      line(from, y - 2, from, y + 2, 'reference-start'),
      line(to, y - 2, to, y + 2, 'reference-end'),
    ];
  });
}

const TOP_SIZE = 4;
/** From the edge, and of the shorter side of a small blank. */
const TOP_CLEAR = 2;
const TOP_SHARE = 0.05;

/** Where each blank lies, on the layer of notes: its outline, and TOP along the edge that is the top as it hangs. */
export function blankNotes(boards: readonly LaidBoard[], fonts: Fonts): readonly Item[] {
  return boards.flatMap(({ layer, outline, place, size: { width, height } }): readonly Item[] => {
    const size = Math.min(TOP_SIZE, TOP_SHARE * Math.min(width, height));
    const at = (p: Point): Point => place({ x: p.x + TOP_CLEAR, y: p.y + TOP_CLEAR + size });
    const paths = lettering('TOP', size, fonts).paths.map((path) => placedPath(path, at));
    return [
      { kind: 'path', pen: 'note', paths: [outline], id: `blank-${layer}` },
      { kind: 'path', pen: 'note', paths, id: `top-${layer}` },
    ];
  });
}

/** Lines of words below each other on the layer of notes, `at` being the upper left of the first. */
export function noteLines(
  lines: readonly string[],
  size: number,
  at: Point,
  id: string,
  fonts: Fonts,
): readonly Item[] {
  return lines.map((line, i): Item => {
    const place = (p: Point): Point => ({ x: p.x + at.x, y: p.y + at.y + (i + 1) * LEADING * size });
    const paths = lettering(line, size, fonts).paths.map((path) => placedPath(path, place));
    return { kind: 'path', pen: 'note', paths, id: `${id}-${i + 1}` };
  });
}

function largest(boxes: readonly Box[]): Box | undefined {
  return [...boxes].sort((a, b) => b.width * b.height - a.width * a.height)[0];
}
