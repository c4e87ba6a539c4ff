import type { AvoidBox, FullScale } from '../../src/drawing/full-scale.ts';
import type { Drawing, Item, Pen } from '../../src/drawing/model.ts';
import { box } from '../../src/geometry/box.ts';
import { mmFromInches } from '../../src/units/units.ts';

const pen = (width: number, dash: readonly number[] = []): Pen => ({ width, colour: 0, dash, cap: 'butt' });

export interface RingShape {
  /** mm, of the board. */
  readonly width: number;
  readonly height: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** A mat with one opening, drawn as a pattern draws it: board edge, line to cut, ticks at the corners, words. */
export function ringMat(shape: RingShape, title = 'Lapwing, linocut: top mat'): FullScale {
  const around = 1;
  const { width, height } = shape;
  const board = box(around, around, width, height);
  const opening = box(
    around + shape.left,
    around + shape.top,
    width - shape.left - shape.right,
    height - shape.top - shape.bottom,
  );
  const edge: Item[] = rectangle('board', board.x, board.y, board.width, board.height);
  const cut: Item[] = rectangle('cut', opening.x, opening.y, opening.width, opening.height);
  const marks: Item[] = [];
  const avoid: AvoidBox[] = [];
  for (const x of [opening.x, opening.x + opening.width]) {
    for (const y of [opening.y, opening.y + opening.height]) {
      marks.push({ kind: 'line', pen: 'mark', from: { x: x + 1.2, y: y - 20 }, to: { x: x + 1.2, y: y + 20 } });
      marks.push({ kind: 'line', pen: 'mark', from: { x: x - 20, y: y - 0.4 }, to: { x: x + 20, y: y - 0.4 } });
      avoid.push({ why: 'corner', box: box(x - 8, y - 8, 16, 16) });
      avoid.push(
        { why: 'tick', box: box(x - 0.2, y - 21, 2.8, 42) },
        { why: 'tick', box: box(x - 21, y - 1.8, 42, 2.8) },
      );
    }
  }
  const words: Item[] = [
    {
      kind: 'text',
      text: 'BACK, this side up',
      at: { x: 1 + width / 2, y: 1 + shape.top / 2 },
      anchor: 'middle',
      size: 9,
      weight: 'bold',
      turn: 0,
      colour: 0,
    },
    {
      kind: 'text',
      text: 'TOP',
      at: { x: 1 + width / 2, y: 14 },
      anchor: 'middle',
      size: 9,
      weight: 'bold',
      turn: 0,
      colour: 0,
    },
    {
      kind: 'text',
      text: '3 1/16 scant',
      at: { x: 1 + shape.left / 2, y: 1 + height / 2 },
      anchor: 'middle',
      size: 7,
      weight: 'bold',
      turn: 270,
      colour: 0,
    },
  ];
  avoid.push({ why: 'reading', box: box(1 + shape.left / 2 - 6, 1 + height / 2 - 25, 10, 50) });
  avoid.push({ why: 'text', box: box(1 + width / 2 - 45, 1 + shape.top / 2 - 8, 90, 12) });
  const corners = [
    board,
    { x: board.x + width, y: board.y },
    { x: board.x, y: board.y + height },
    { x: board.x + width, y: board.y + height },
  ];
  const diagonal = Math.hypot(width, height);
  const drawing: Drawing = {
    title,
    width: width + 2 * around,
    height: height + 2 * around,
    view: 'back',
    pens: {
      board: pen(0.3, [7, 1.5, 1, 1.5]),
      cut: pen(0.35),
      mark: pen(0.25, [2.5, 0.8]),
    },
    groups: [
      { name: 'board', label: "Board's edge", shown: true, items: edge },
      { name: 'cut', label: 'Lines to cut', shown: true, items: cut },
      { name: 'marks', label: 'Start and stop marks', shown: true, items: marks },
      { name: 'notes', label: 'Words', shown: true, items: words },
    ],
  };
  return {
    drawing,
    avoid,
    warnings: [],
    facts: [
      {
        label: 'board, diagonal',
        from: { x: corners[0]!.x, y: corners[0]!.y },
        to: { x: corners[3]!.x, y: corners[3]!.y },
        length: diagonal,
        shown: `${diagonal.toFixed(1)} mm`,
        group: 'board',
      },
      {
        label: 'board, other diagonal',
        from: { x: corners[2]!.x, y: corners[2]!.y },
        to: { x: corners[1]!.x, y: corners[1]!.y },
        length: diagonal,
        shown: `${diagonal.toFixed(1)} mm`,
        group: 'board',
      },
    ],
    board,
    legend: [
      { pen: 'cut', text: 'line to follow with the blade' },
      { pen: 'mark', text: 'tick: start and stop' },
      { pen: 'board', text: "board's edge" },
    ],
  };
}

function rectangle(name: string, x: number, y: number, width: number, height: number): Item[] {
  const [a, b, c, d] = [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
  return (
    [
      ['top', a, b],
      ['right', b, c],
      ['bottom', c, d],
      ['left', d, a],
    ] as const
  ).map(([side, from, to]) => ({
    kind: 'line',
    pen: name,
    from,
    to,
    id: `${name}-${side}`,
  }));
}

const inches = (width: number, height: number, top: number, side: number, bottom: number): RingShape => ({
  width: mmFromInches(width),
  height: mmFromInches(height),
  top: mmFromInches(top),
  right: mmFromInches(side),
  bottom: mmFromInches(bottom),
  left: mmFromInches(side),
});

/** 16 × 20 in, borders 3, 2 3/4 and 3 1/2 in. */
export const MIDDLING = ringMat(inches(16, 20, 3, 2.75, 3.5));
/** A full sheet of mat board, 4 in borders. */
export const LARGE = ringMat(inches(32, 40, 4, 4, 4));

/** Only the lines of a work, none of its words. */
export const linesOnly = (work: FullScale): FullScale => ({
  ...work,
  drawing: {
    ...work.drawing,
    groups: work.drawing.groups.map((group) => ({
      ...group,
      items: group.items.filter((item) => item.kind === 'line'),
    })),
  },
});
