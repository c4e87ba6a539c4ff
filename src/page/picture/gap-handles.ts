import type { Piece } from '../engine/answers.ts';
import type { Edit } from '../state/edit.ts';
import { said } from '../state/piece.ts';
import { type Handle, plain } from './handle.ts';

type Box = Piece['report']['openings'][number]['layers'][number]['face'];

/** The gaps between openings that lie in rows: the edge that faces the gap is taken hold of. */
export function gapHandles(piece: Piece): readonly Handle[] {
  if (said(['arrange', 'fill']) === true) return [];
  const rows = rowsOf(piece);
  const [row] = rows.filter(({ length }) => length > 1);
  return [
    ...(row === undefined ? [] : across(row[0]!, row[1]!, row.length, piece)),
    ...(rows.length < 2 ? [] : down(rows[0]![0]!, rows[1]![0]!, rows.length, piece)),
  ];
}

/** Boxes of the top mat's openings that have no place of their own, row by row. */
function rowsOf({ report }: Piece): readonly (readonly Box[])[] {
  const boxes = report.openings.flatMap(({ opening, layers }) => {
    const box = layers[0]?.face;
    return box === undefined || said(['openings', opening - 1, 'place']) !== undefined ? [] : [box];
  });
  const rows: Box[][] = [];
  for (const box of boxes) {
    const last = rows.at(-1)?.at(-1);
    if (last === undefined || box.x < last.x + last.width) rows.push([box]);
    else rows.at(-1)!.push(box);
  }
  return rows;
}

/**
 * How much a gap grows for a mm that the hold is moved: where the outer size stands, the whole group is centred, so that
 * the first opening moves by half of what all gaps together gain; else the second moves away from the first.
 */
function held(count: number): { readonly first: boolean; readonly grows: number } {
  const stands = said(['mat', 'outer']) !== undefined || said(['mat', 'frame']) !== undefined;
  return stands ? { first: true, grows: -2 / (count - 1) } : { first: false, grows: 1 };
}

const valueNow = (name: string, { why }: Piece): number | undefined => why.find(({ size }) => size === name)?.value;

function across(a: Box, b: Box, count: number, piece: Piece): readonly Handle[] {
  const size = 'gap.width';
  const value = valueNow(size, piece);
  if (value === undefined) return [];
  const { first, grows } = held(count);
  const x = first ? a.x + a.width : b.x;
  const box = first ? a : b;
  return [
    {
      id: 'gap-across',
      what: 'gap between neighbours',
      size,
      axis: 'x',
      from: { x, y: box.y },
      to: { x, y: box.y + box.height },
      value,
      grows,
      edits: (next) => gapEdits('across', plain(next, piece.units)),
    },
  ];
}

function down(a: Box, b: Box, count: number, piece: Piece): readonly Handle[] {
  const size = 'gap.height';
  const value = valueNow(size, piece);
  if (value === undefined) return [];
  const { first, grows } = held(count);
  const y = first ? a.y + a.height : b.y;
  const box = first ? a : b;
  return [
    {
      id: 'gap-down',
      what: 'gap between rows',
      size,
      axis: 'y',
      from: { x: box.x, y },
      to: { x: box.x + box.width, y },
      value,
      grows,
      edits: (next) => gapEdits('down', plain(next, piece.units)),
    },
  ];
}

/** Where the text says one gap for both ways, that one changes. */
function gapEdits(way: 'across' | 'down', value: ReturnType<typeof plain>): readonly Edit[] {
  const path = ['arrange', 'gap'];
  return [{ path: typeof said(path) === 'object' ? [...path, way] : path, value }];
}
