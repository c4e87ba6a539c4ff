import fc from 'fast-check';
import { extent, type Figure, moved, shifted } from './figure.ts';
import { SHAPES } from './shapes.ts';

export type Hand = 'left' | 'right';

export interface Board {
  readonly thickness: number;
  readonly angle: number;
  readonly reverse: boolean;
  readonly reveal: number;
}

/** A head or a machine with a tilted blade: how it stands to the travel and how far its blade is ahead of its mark. */
export interface Head {
  readonly opening: Hand;
  readonly start: number;
  readonly stop: number;
  readonly overrun: number;
}

/** A job as data, with its text, and what must come out: all of it is known before the engine sees a word. */
export interface Wanted {
  readonly text: string;
  readonly width: number;
  readonly height: number;
  readonly layers: readonly Board[];
  /** Off each edge of an under mat, with mats cut together. */
  readonly trimBack: number;
  readonly stack: 'together' | 'apart';
  /** Thickness of paper that stays on; 0 where it comes off. */
  readonly paper: number;
  /** By opening, then by layer, seen from the face, from the top mat's upper left corner. */
  readonly openings: readonly (readonly { readonly face: Figure; readonly back: Figure; readonly lifted: Figure }[])[];
}

export const cot = (degrees: number): number => (degrees === 90 ? 0 : 1 / Math.tan((degrees * Math.PI) / 180));

const upTo = (min: number, max: number) => fc.integer({ min, max });

const board = fc.record({
  thickness: fc.constantFrom(1.2, 1.4, 1.5, 2.2, 3.1),
  angle: fc.constantFrom(45, 45, 52, 60, 90),
  reverse: fc.boolean(),
  reveal: upTo(5, 9),
});

/** Openings in a grid, each with a place of its own; borders and bars are wide enough for any bevel. */
export const wanted: fc.Arbitrary<Wanted> = fc
  .record({
    shapes: fc.array(fc.record({ shape: fc.constantFrom(...SHAPES), w: upTo(90, 170), h: upTo(90, 200) }), {
      minLength: 1,
      maxLength: 3,
    }),
    layers: fc.array(board, { minLength: 1, maxLength: 3 }),
    margins: fc.record({ left: upTo(30, 90), top: upTo(30, 90), right: upTo(30, 90), bottom: upTo(30, 90) }),
    gap: upTo(26, 60),
    stack: fc.constantFrom('together' as const, 'apart' as const),
    paper: fc.constantFrom(0, 0, 0.1, 0.25),
  })
  .map((given) => wantedOf(given));

interface Given {
  readonly shapes: readonly { readonly shape: (typeof SHAPES)[number]; readonly w: number; readonly h: number }[];
  readonly layers: readonly Board[];
  readonly margins: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
  readonly gap: number;
  readonly stack: 'together' | 'apart';
  readonly paper: number;
}

function wantedOf({ shapes, layers: given, margins, gap, stack, paper }: Given): Wanted {
  const layers = given.map(({ angle, reverse, ...rest }) => ({ ...rest, angle, reverse: reverse && angle !== 90 }));
  // The size that is given is the lowest face; each layer above stands back by the reveals below it.
  const backs = layers.map((_, k) => layers.slice(k + 1).reduce((sum, { reveal }) => sum + reveal, 0));
  let x = margins.left;
  let tallest = 0;
  const texts: string[] = [];
  const openings = shapes.map(({ shape, w, h: wished }) => {
    const h = shape.aspect === undefined ? wished : w / shape.aspect;
    const lowest = shape.figure(w, h);
    const top = extent(moved(lowest, backs[0]!));
    const place = { x: x - top.left, y: margins.top - top.top };
    texts.push(`{${shape.words}, size: ${w} x ${Number(h.toFixed(9))}, place: {left: ${x}, top: ${margins.top}}}`);
    x += top.right - top.left + gap;
    tallest = Math.max(tallest, top.bottom - top.top);
    return layers.map(({ thickness, angle, reverse }, k) => {
      const inwards = (t: number): number => (reverse ? 1 : -1) * t * cot(angle);
      return {
        face: shifted(moved(lowest, backs[k]!), place),
        back: shifted(moved(lowest, backs[k]! + inwards(thickness)), place),
        lifted: shifted(moved(lowest, backs[k]! + inwards(thickness + paper)), place),
      };
    });
  });
  const width = Math.ceil(x - gap + margins.right);
  const height = Math.ceil(margins.top + tallest + margins.bottom);
  const trimBack = stack === 'together' ? 3 : 0;
  const boards = layers.map(({ thickness, angle, reverse, reveal }, k) => {
    const more = k === 0 ? '' : `, reveal: ${reveal}, trimBack: ${trimBack}`;
    return `{board: {name: b${k}, thickness: ${thickness}}, bevel: {angle: ${angle}, reverse: ${reverse}}${more}}`;
  });
  const transfer = paper === 0 ? '' : `print: {transfer: cut-through, paperThickness: ${paper}}\n`;
  const text = `units: mm
mat: {outer: ${width} x ${height}, layers: [${boards.join(', ')}]}
openings: [${texts.join(', ')}]
bench: {head: h, stack: ${stack}}
${transfer}`;
  return { text, width, height, layers, trimBack, stack, paper, openings };
}

export const head: fc.Arbitrary<Head> = fc.record({
  opening: fc.constantFrom('left' as const, 'right' as const),
  start: fc.constantFrom(0, 1.2, -2.3, 4),
  stop: fc.constantFrom(0, -0.4, 0.9),
  overrun: fc.constantFrom(0.25, 0.1, 0.4),
});
