import type { Side } from '../../geometry/sides.ts';
import type { Plain } from '../../read/edit/yaml-print.ts';
import { showAmount } from '../../units/print.ts';
import type { Piece } from '../engine/answers.ts';
import type { Edit } from '../state/edit.ts';
import { said } from '../state/piece.ts';
import { gapHandles } from './gap-handles.ts';
import { type Handle, plain } from './handle.ts';
import { revealHandles } from './reveal-handles.ts';

const BORDER = ['mat', 'border'];

/** What can be moved on this piece. */
export function handlesOf(piece: Piece): readonly Handle[] {
  return [
    ...outerHandles(piece),
    ...borderHandles(piece),
    ...gapHandles(piece),
    ...revealHandles(piece),
    ...placeHandles(piece),
  ];
}

function outerHandles({ report, framed, units }: Piece): readonly Handle[] {
  if (framed) return [];
  const { width, height } = report.outer;
  const size = (w: number, h: number): readonly Edit[] => [
    { path: ['mat', 'outer'], value: `${showAmount(w, units)} x ${showAmount(h, units)}` },
  ];
  return [
    {
      id: 'outer-width',
      what: 'right edge of the mat',
      size: 'outer.width',
      axis: 'x',
      from: { x: width, y: 0 },
      to: { x: width, y: height },
      value: width,
      grows: 1,
      edits: (value) => size(value, height),
    },
    {
      id: 'outer-height',
      what: 'lower edge of the mat',
      size: 'outer.height',
      axis: 'y',
      from: { x: 0, y: height },
      to: { x: width, y: height },
      value: height,
      grows: 1,
      edits: (value) => size(width, value),
    },
  ];
}

function borderHandles({ report, units }: Piece): readonly Handle[] {
  const { border, outer } = report;
  const [left, right] = [border.left, outer.width - border.right];
  const [top, bottom] = [border.top, outer.height - border.bottom];
  const lines: Readonly<Record<Side, Pick<Handle, 'axis' | 'from' | 'to' | 'grows'>>> = {
    left: { axis: 'x', from: { x: left, y: top }, to: { x: left, y: bottom }, grows: 1 },
    right: { axis: 'x', from: { x: right, y: top }, to: { x: right, y: bottom }, grows: -1 },
    top: { axis: 'y', from: { x: left, y: top }, to: { x: right, y: top }, grows: 1 },
    bottom: { axis: 'y', from: { x: left, y: bottom }, to: { x: right, y: bottom }, grows: -1 },
  };
  return (Object.keys(lines) as readonly Side[]).map((side) => ({
    id: `border-${side}`,
    what: `${side} border`,
    size: `border.${side}`,
    ...lines[side],
    value: border[side],
    edits: (value) => borderEdits(side, plain(value, units)),
  }));
}

/** Where the text says one border for all, or for both sides, that one changes; else the side by itself. */
function borderEdits(side: Side, value: Plain): readonly Edit[] {
  const border = said(BORDER);
  if (border !== undefined && typeof border !== 'object') return [{ path: BORDER, value }];
  const sides = said([...BORDER, 'sides']) !== undefined && (side === 'left' || side === 'right');
  return [{ path: [...BORDER, sides ? 'sides' : side], value }];
}

/** Openings that have a place of their own, by the sides that the text says. */
function placeHandles({ report, units }: Piece): readonly Handle[] {
  const { outer } = report;
  return report.openings.flatMap(({ opening, name, layers }): Handle[] => {
    const box = layers[0]?.face;
    const at = (key: string) => ['openings', opening - 1, 'place', key];
    if (box === undefined || said(at('').slice(0, -1)) === undefined) return [];
    const [right, bottom] = [box.x + box.width, box.y + box.height];
    const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    const one = (key: string, value: number, grows: 1 | -1): Handle[] => {
      if (said(at(key)) === undefined) return [];
      const axis = key === 'left' || key === 'right' ? 'x' : 'y';
      const from =
        axis === 'x' ? { x: middle.x - box.width / 4, y: middle.y } : { x: middle.x, y: middle.y - box.height / 4 };
      const to =
        axis === 'x' ? { x: middle.x + box.width / 4, y: middle.y } : { x: middle.x, y: middle.y + box.height / 4 };
      return [
        {
          id: `place-${opening}-${key}`,
          what: `${name}, from the ${key}`,
          size: '',
          axis,
          from,
          to,
          value,
          grows,
          edits: (mm) => [{ path: at(key), value: plain(mm, units) }],
        },
      ];
    };
    return [
      ...one('left', box.x, 1),
      ...one('right', outer.width - right, -1),
      ...one('top', box.y, 1),
      ...one('bottom', outer.height - bottom, -1),
    ];
  });
}
