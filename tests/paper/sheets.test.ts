import { describe, expect, it } from 'vitest';
import { itemBox } from '../../src/drawing/bounds.ts';
import type { Page } from '../../src/drawing/document.ts';
import type { FullScale } from '../../src/drawing/full-scale.ts';
import type { Drawing, Item } from '../../src/drawing/model.ts';
import { type Box, bottom, contains, overlaps, right } from '../../src/geometry/box.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import type { Layout } from '../../src/paper/layout.ts';
import type { LayoutOptions } from '../../src/paper/options.ts';
import { mmFromInches } from '../../src/units/units.ts';
import { FONTS } from '../fonts/loaded.ts';
import {
  deepFrozen,
  drawnPoints,
  even,
  furnitureOf,
  isShown,
  itemsOf,
  laid,
  onPage,
  type Sheet,
  sheetsIn,
  textsOf,
} from './laid.ts';
import { LARGE, MIDDLING, ringMat } from './sample.ts';

const SMALL = ringMat({ width: 203, height: 254, top: 50, right: 40, bottom: 60, left: 45 }, 'Wren, linocut: top mat');
const DEEP = ringMat({ width: 500, height: 400, top: 150, right: 140, bottom: 160, left: 150 });

const office = { id: 'office', x: 0.9965, y: 1.004, calibrated: true, margin: even(5) };
const CASES: readonly (readonly [string, FullScale, string, Partial<LayoutOptions>])[] = [
  ['a full board on Letter, middle skipped', LARGE, 'letter', {}],
  ['16 × 20 in on Letter', MIDDLING, 'letter', {}],
  ['16 × 20 in on A4, butted', MIDDLING, 'a4', { join: 'butt' }],
  ['8 × 10 in on small paper', SMALL, '110 x 150 mm', { lap: 10 }],
  ['a wide lap', MIDDLING, 'a3', { lap: 40 }],
  [
    'turned by a quarter',
    ringMat({ width: 500, height: 180, top: 40, right: 40, bottom: 40, left: 40 }),
    '216 x 280 mm',
    { margin: { top: 5, bottom: 5, left: 5, right: 20 } },
  ],
  ['deep borders', DEEP, 'letter', {}],
  ['corrected for a printer', MIDDLING, 'letter', { printer: office }],
  ['corner sheets', LARGE, 'letter', { extent: 'corners' }],
  ['corner sheets that are joined', DEEP, '150 x 200 mm', { extent: 'corners' }],
];

const layouts = new Map<string, Layout>(CASES.map(([name, work, paper, more]) => [name, laid(work, paper, more)]));
const each = CASES.map(([name, { drawing }, , more]) => [name, drawing, more, layouts.get(name)!] as const);

/** Where content may lie on a page: off the margins before the printer's correction and after it. */
function printable(page: Page, { margin = even(6.35), printer }: Partial<LayoutOptions>): Box {
  const hard = printer?.margin ?? even(0);
  const sideways = page.paper.width > page.paper.height;
  const m = (side: 'top' | 'right' | 'bottom' | 'left') =>
    Math.max(margin[side], sideways ? Math.max(...Object.values(hard)) : hard[side]);
  const { x, y } = page.scale;
  const [left, top] = [m('left') * Math.max(1, x), m('top') * Math.max(1, y)];
  return {
    x: left,
    y: top,
    width: (page.paper.width - m('right')) * Math.min(1, x) - left,
    height: (page.paper.height - m('bottom')) * Math.min(1, y) - top,
  };
}

const boxesOf = (items: readonly Item[], pens: Drawing['pens']): readonly Box[] =>
  items.flatMap((item) => itemBox(item, pens, FONTS) ?? []);

const drawnBoxes = ({ groups, pens }: Drawing): readonly Box[] =>
  boxesOf(
    groups.flatMap(({ items }) => items),
    pens,
  );

function textBoxesOnPage(drawing: Drawing, sheet: Sheet): readonly Box[] {
  return drawing.groups.flatMap(({ items }) =>
    items.flatMap((item) => {
      const b = item.kind === 'text' ? itemBox(item, drawing.pens, FONTS) : undefined;
      if (b === undefined) return [];
      const [p, q] = [onPage({ x: b.x, y: b.y }, sheet), onPage({ x: right(b), y: bottom(b) }, sheet)];
      const on: Box = {
        x: Math.min(p.x, q.x),
        y: Math.min(p.y, q.y),
        width: Math.abs(p.x - q.x),
        height: Math.abs(p.y - q.y),
      };
      return [on];
    }),
  );
}

describe.each(each)('%s', (_, drawing, more, layout) => {
  const sheets = sheetsIn(layout);

  it('keeps everything within what the printer reaches, before and after its correction', () => {
    for (const page of layout.pages) {
      const area = printable(page, more);
      for (const b of furnitureOf(page).flatMap((drawing) => drawnBoxes(drawing)))
        expect(contains(area, b, 0.001), `${page.name}`).toBe(true);
      if (page.part === undefined) continue;
      const { pageX, pageY, width, height } = page.part;
      const size = page.rotation % 180 === 0 ? { width, height } : { width: height, height: width };
      expect(contains(area, { x: pageX, y: pageY, ...size }, 1e-6)).toBe(true);
    }
  });

  it('lays no words over the words of the drawing, nor over each other', () => {
    for (const sheet of sheets) {
      const own = itemsOf(sheet).filter((item) => item.kind === 'text');
      const boxes = boxesOf(own, {});
      const theirs = textBoxesOnPage(drawing, sheet);
      boxes.forEach((b, i) => {
        expect(
          theirs.some((t) => overlaps(b, t)),
          `${sheet.name}: ${JSON.stringify(own[i])}`,
        ).toBe(false);
        expect(
          boxes.some((other, j) => j !== i && overlaps(b, other)),
          `${sheet.name}: ${JSON.stringify(own[i])}`,
        ).toBe(false);
      });
    }
  });

  it('draws nothing solid that could be taken for a line to cut', () => {
    for (const sheet of sheets) {
      for (const item of itemsOf(sheet)) {
        if (item.kind !== 'line' || furnitureOf(sheet)[0]!.pens[item.pen]!.dash.length > 0) continue;
        expect(distance(item.from, item.to)).toBeLessThan(4);
      }
    }
  });

  it('names every sheet once, counts it, and says whose it is', () => {
    expect(new Set(layout.pages.map((page) => page.name)).size).toBe(layout.pages.length);
    sheets.forEach((sheet, i) => {
      const texts = textsOf(sheet);
      expect(texts).toContain(sheet.name);
      const all = texts.join(' ');
      expect(all).toContain(`sheet ${i + 1} of ${sheets.length}`);
      expect(all).toContain('seen from the BACK');
      expect(all).toContain(drawing.title.slice(0, 3));
    });
  });

  it('has a ruler in x and one in y, in mm and in inches, true to their numbers', () => {
    for (const sheet of sheets) {
      const ticks = itemsOf(sheet).filter((item) => item.kind === 'line' && item.pen === 'tick');
      const lines = ticks.flatMap((item) => (item.kind === 'line' ? [item] : []));
      for (const upright of [false, true]) {
        const along = (p: Point) => (upright ? p.y : p.x);
        const own = lines.filter(({ from, to }) => (upright ? from.y === to.y : from.x === to.x));
        const zero = own.find(({ id }) => id === 'ruler-0mm')!;
        const last = own.filter(({ id }) => id !== undefined).at(-1)!;
        const mm = Number(/ruler-(\d+)mm/.exec(last.id!)![1]);
        expect(mm).toBeGreaterThanOrEqual(20);
        expect(Math.abs(along(last.from) - along(zero.from))).toBeCloseTo(mm, 9);
        const inches = own
          .filter(({ id }) => id === undefined)
          .map(({ from }) => Math.abs(along(from) - along(zero.from)));
        expect(inches.some((length) => Math.abs(length - mmFromInches(mm >= 50 ? 2 : mm >= 30 ? 1 : 0.5)) < 1e-9)).toBe(
          true,
        );
      }
    }
  });

  it('gives every seam two crosses of the same names on both sheets, at the same place of the drawing', () => {
    for (const sheet of sheets) {
      for (const neighbour of Object.values(sheet.neighbours ?? {})) {
        const other = sheets.find(({ name }) => name === neighbour)!;
        expect(Object.values(other.neighbours ?? {})).toContain(sheet.name);
        const pair = [`${sheet.name}|${other.name} `, `${other.name}|${sheet.name} `];
        const mine = sheet.crosses!.filter(({ name }) => pair.some((start) => name.startsWith(start)));
        expect(mine.length).toBeGreaterThanOrEqual(2);
        for (const cross of mine) {
          const twin = other.crosses!.find(({ name }) => name === cross.name)!;
          expect(distance(cross.inDrawing, twin.inDrawing)).toBeLessThan(0.001);
          for (const [page, mark] of [[sheet, cross] as const, [other, twin] as const]) {
            expect(distance(onPage(mark.inDrawing, page), mark.onPage)).toBeLessThan(0.001);
            expect(textsOf(page)).toContain(cross.name);
            const lines = itemsOf(page).flatMap((item) =>
              item.kind === 'line' && item.id?.startsWith(`cross ${cross.name} `) === true ? [item] : [],
            );
            expect(lines).toHaveLength(2);
            for (const { from, to } of lines) {
              const on = from.y === to.y ? { x: mark.onPage.x, y: from.y } : { x: from.x, y: mark.onPage.y };
              expect(distance(on, mark.onPage)).toBeLessThan(0.001);
              expect(
                Math.min(from.x, to.x) <= mark.onPage.x + 1e-9 && Math.max(from.x, to.x) >= mark.onPage.x - 1e-9,
              ).toBe(true);
            }
          }
        }
        // Far apart: along a seam a slip of the paper then turns it by little.
        const [a, b] = [mine[0]!.inDrawing, mine.at(-1)!.inDrawing];
        const shared = Math.min(sheet.part.width, sheet.part.height, other.part.width, other.part.height);
        expect(distance(a, b)).toBeGreaterThan(shared * 0.35);
      }
    }
  });

  it('laid together by crosses alone, the sheets are the whole drawing', () => {
    // Each page is shifted until its crosses lie on those of a page that is laid already.
    const shift = new Map<string, Point>();
    for (const start of sheets) {
      if (shift.has(start.name)) continue;
      shift.set(start.name, { x: 0, y: 0 });
      const queue = [start];
      const members = [start];
      for (let sheet = queue.shift(); sheet !== undefined; sheet = queue.shift()) {
        const at = shift.get(sheet.name)!;
        for (const name of Object.values(sheet.neighbours ?? {})) {
          if (shift.has(name)) continue;
          const other = sheets.find((s) => s.name === name)!;
          const marks = sheet.crosses!.flatMap((mark) => {
            const twin = other.crosses!.find((one) => one.name === mark.name);
            return twin === undefined
              ? []
              : [{ x: at.x + mark.onPage.x - twin.onPage.x, y: at.y + mark.onPage.y - twin.onPage.y }];
          });
          expect(distance(marks[0]!, marks[1]!)).toBeLessThan(0.001);
          shift.set(name, marks[0]!);
          queue.push(other);
          members.push(other);
        }
      }
      const laidAt = (p: Point, sheet: Sheet): Point => {
        const on = onPage(p, sheet);
        return { x: on.x + shift.get(sheet.name)!.x, y: on.y + shift.get(sheet.name)!.y };
      };
      for (const p of drawnPoints(drawing, 3)) {
        const shown = members.filter((sheet) => isShown(p, sheet)).map((sheet) => laidAt(p, sheet));
        for (const q of shown) expect(distance(shown[0]!, q)).toBeLessThan(0.001);
      }
      if (layout.sheets > 1 && more.extent !== 'corners') expect(members).toHaveLength(sheets.length);
    }
  });

  it('is plain data, the same every time, and leaves the drawing alone', () => {
    expect(structuredClone(layout)).toEqual(layout);
  });
});

it('a frozen drawing gives the same layout twice', () => {
  const frozen = deepFrozen(structuredClone(MIDDLING));
  expect(laid(frozen, 'letter')).toEqual(laid(MIDDLING, 'letter'));
});
