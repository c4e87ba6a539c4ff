import fc from 'fast-check';

/** Jobs of several openings of every shape, in mm, as text; most of them can be made, the rest are told of. */
const upTo = (min: number, max: number) => fc.integer({ min, max });

const shapes = fc.constantFrom(
  '',
  'shape: oval, ',
  'shape: round-arch, ',
  'shape: arch, ',
  'shape: rounded, radius: 12, ',
  'shape: notched, notch: 8, steps: 2, ',
  'shape: clipped, clip: 14, ',
);
const squares = fc.constantFrom(
  'shape: circle, ',
  'shape: polygon, sides: 6, ',
  'shape: polygon, sides: 5, stands: corner, ',
);
const frees = fc.constantFrom(
  'outline: "0,0 90,10 100,80 40,100", ',
  'outline: "M0 0 L80 0 L80 50 A40 40 0 0 1 0 50 Z", ',
  'outline: "M0 40 C0 0 100 0 100 40 S80 110 50 110 S0 80 0 40 Z", ',
);

export const anyOpening = fc.oneof(
  fc
    .tuple(shapes, upTo(70, 160), upTo(90, 190), fc.boolean())
    .map(([shape, w, h, art]) => (art ? `${shape}artwork: ${w} x ${h}, overlap: 5` : `${shape}size: ${w} x ${h}`)),
  fc.tuple(squares, upTo(80, 150)).map(([shape, w]) => `${shape}artwork: ${w} x ${w + 20}`),
  frees.map((shape) => shape.replace(/, $/, '')),
);

export interface GroupJob {
  readonly text: string;
  readonly count: number;
}

export const groupJob: fc.Arbitrary<GroupJob> = fc
  .record({
    openings: fc.array(anyOpening, { minLength: 1, maxLength: 7 }),
    columns: upTo(1, 4),
    aligned: fc.boolean(),
    gap: upTo(18, 45),
    border: upTo(35, 90),
    layers: upTo(1, 3),
    reveal: upTo(4, 8),
    angle: fc.constantFrom(45, 60, 90),
    align: fc.constantFrom('centre', 'base', 'top'),
    hand: fc.constantFrom('left', 'right'),
    sight: fc.boolean(),
  })
  .map((r) => {
    const layers = Array.from({ length: r.layers }, (_, i) =>
      i === 0 ? `{board: b, bevel: ${r.angle}}` : `{board: b, reveal: ${r.reveal}}`,
    ).join(', ');
    const measure = r.sight ? ', measure: sight' : '';
    const list = r.openings.map((each, i) => `  - {name: n${i + 1}, ${each}${measure}}`).join('\n');
    const rows: number[] = [];
    for (let left = r.openings.length; left > 0; left -= r.columns) rows.push(Math.min(left, r.columns));
    const how = r.aligned ? `columns: ${r.columns}` : `rows: [${rows}]`;
    // Apart where curves must be told from the stack's own conditions.
    return {
      count: r.openings.length,
      text: `units: mm
mat: {border: {sides: ${r.border}, top: ${r.border}, bottom: ${r.border + 9}}, layers: [${layers}]}
openings:
${list}
arrange: {${how}, gap: ${r.gap + 2 * r.layers * r.reveal}, align: ${r.align}}
bench: {head: h, stack: apart}
`,
    };
  });

export const groupShop = (hand = 'left'): string => `
units: mm
boards: {b: {thickness: 1.4, name: Bone}}
heads: {h: {bevel: 45, opening: ${hand}, start: 1.2, stop: -0.4}}
`;
