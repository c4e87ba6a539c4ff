import fc from 'fast-check';
import {
  type Document,
  type Frame,
  layersOf,
  type Page,
  type Rotation,
  wholeFrame,
} from '../../src/drawing/document.ts';
import type { Drawing, Group, Item, LineItem, Pen } from '../../src/drawing/model.ts';
import { box } from '../../src/geometry/box.ts';
import type { Part } from '../../src/paper/model.ts';

export const PENS = {
  heavy: { width: 0.5, colour: 0, dash: [], cap: 'butt' },
  fine: { width: 0.18, colour: 0.35, dash: [], cap: 'round' },
  dashed: { width: 0.25, colour: '#204080', dash: [3, 1.5], cap: 'butt' },
  dotted: { width: 0.4, colour: 0.6, dash: [0, 1.2, 4, 1.2], cap: 'round' },
} as const satisfies Record<string, Pen>;

export const line = (pen: keyof typeof PENS, x1: number, y1: number, x2: number, y2: number): LineItem => ({
  kind: 'line',
  pen,
  from: { x: x1, y: y1 },
  to: { x: x2, y: y2 },
});

/** A filled square. */
export function square(x: number, y: number, size: number, fill: number | string = 0): Item {
  const corners = [
    { x: x + size, y },
    { x: x + size, y: y + size },
    { x, y: y + size },
    { x, y },
  ];
  const segments = corners.map((to) => ({ kind: 'line', to }) as const);
  return { kind: 'path', fill, paths: [{ start: { x, y }, segments, closed: true }] };
}

export function drawingOf(width: number, height: number, groups: readonly Group[]): Drawing {
  return { title: 'Sample', width, height, view: 'back', pens: PENS, groups };
}

export const group = (name: string, items: readonly Item[], shown = true): Group => ({
  name,
  label: `All of ${name}`,
  shown,
  items,
});

/** A page of one drawing, with lines of its own below and above it. */
export interface SamplePage extends Omit<Page, 'frames'> {
  readonly rotation: Rotation;
  readonly part?: Part;
  readonly under: readonly Item[];
  readonly over: readonly Item[];
}

export interface SampleDocument extends Document {
  readonly drawing: Drawing;
  readonly pages: readonly (SamplePage & Page)[];
}

export function pageOf(number: number, over: Partial<SamplePage> = {}): SamplePage {
  return {
    name: `P${number}`,
    label: `${number}`,
    paper: { width: 210, height: 297 },
    rotation: 0,
    scale: { x: 1, y: 1 },
    under: [],
    over: [],
    ...over,
  };
}

function framesOf(drawing: Drawing, { paper, part, rotation, under, over }: SamplePage): readonly Frame[] {
  const furniture = (name: string, items: readonly Item[]): readonly Frame[] =>
    items.length === 0 ? [] : [wholeFrame({ ...drawingOf(paper.width, paper.height, [group(name, items)]) })];
  if (part === undefined) return [...furniture('under', under), ...furniture('over', over)];
  const { pageX, pageY, ...clip } = part;
  const shown: Frame = { drawing, clip, turn: rotation, at: { x: pageX, y: pageY } };
  return [...furniture('under', under), shown, ...furniture('over', over)];
}

export const documentOf = (drawing: Drawing, pages: readonly SamplePage[]): SampleDocument => ({
  title: 'Sample for the bench',
  subject: 'A sample',
  language: 'en',
  layers: layersOf(drawing),
  drawing,
  pages: pages.map((page) => ({ ...page, frames: framesOf(drawing, page) })),
});

/** The whole drawing on one page of its own size. */
export function wholePage(drawing: Drawing): SampleDocument {
  const { width, height } = drawing;
  return documentOf(drawing, [
    pageOf(1, { paper: { width, height }, part: { ...box(0, 0, width, height), pageX: 0, pageY: 0 } }),
  ]);
}

const mm = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

const lines = (width: number, height: number, most: number): fc.Arbitrary<readonly LineItem[]> =>
  fc.array(
    fc
      .tuple(
        fc.constantFrom(...(Object.keys(PENS) as (keyof typeof PENS)[])),
        mm(0, width),
        mm(0, height),
        mm(0, width),
        mm(0, height),
      )
      .map(([pen, x1, y1, x2, y2]) => line(pen, x1, y1, x2, y2)),
    { maxLength: most },
  );

const partsOf = ({ width, height }: Drawing): fc.Arbitrary<Part> =>
  fc.tuple(mm(0, 0.9), mm(0, 0.9), mm(0.05, 1), mm(0.05, 1), mm(0, 30), mm(0, 30)).map(([x, y, w, h, pageX, pageY]) => {
    const [left, top] = [x * width, y * height];
    return { ...box(left, top, w * (width - left), h * (height - top)), pageX, pageY };
  });

const pagesOf = (drawing: Drawing): fc.Arbitrary<readonly SamplePage[]> =>
  fc
    .array(
      fc.record({
        part: partsOf(drawing),
        rotation: fc.constantFrom(0, 90, 180, 270),
        scale: fc.oneof(fc.constant({ x: 1, y: 1 }), fc.record({ x: mm(0.97, 1.03), y: mm(0.97, 1.03) })),
        paper: fc.record({ width: mm(60, 1200), height: mm(60, 1200) }),
      }),
      { minLength: 1, maxLength: 4 },
    )
    .chain((pages) =>
      fc.tuple(
        ...pages.map((page, i) =>
          fc
            .tuple(lines(page.paper.width, page.paper.height, 4), lines(page.paper.width, page.paper.height, 4))
            .map(([under, over]) => pageOf(i + 1, { ...(page as Partial<SamplePage>), under, over })),
        ),
      ),
    );

/** Drawings up to 3 m long, of lines in two groups, on one to four turned and corrected pages. */
export const documents: fc.Arbitrary<SampleDocument> = fc
  .record({ width: mm(20, 3000), height: mm(20, 3000), shown: fc.boolean() })
  .chain(({ width, height, shown }) =>
    fc
      .tuple(lines(width, height, 12), lines(width, height, 12))
      .map(([cut, marks]) => drawingOf(width, height, [group('cut', cut), group('marks', marks, shown)])),
  )
  .chain((drawing) => pagesOf(drawing).map((pages) => documentOf(drawing, pages)));
