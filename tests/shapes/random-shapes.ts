import fc from 'fast-check';
import type { Path } from '../../src/geometry/path.ts';
import { readOutline } from '../../src/shapes/read-outline.ts';
import type { Fields } from '../../src/shapes/shape.ts';
import type { ShapeKind } from '../../src/shapes/shapes.ts';

export interface RandomShape {
  readonly kind: ShapeKind;
  readonly frame: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly fields: Fields;
}

/** Spread evenly: floating-point numbers drawn as such crowd about their ends. */
const length = (min: number, max: number) =>
  fc.integer({ min: 0, max: 100_000 }).map((k) => min + ((max - min) * k) / 100_000);

/** A star-like outline about 0 0 with straight, round and curved sides, which never crosses itself. */
const freeOutline: fc.Arbitrary<Path> = fc
  .tuple(fc.array(length(0.55, 1), { minLength: 4, maxLength: 9 }), fc.constantFrom('lines', 'curves', 'arcs'))
  .map(([radii, sides]) => {
    const points = radii.map((r, i) => {
      const angle = (2 * Math.PI * i) / radii.length;
      return { x: 60 * r * Math.cos(angle), y: 60 * r * Math.sin(angle) };
    });
    const mid = points.map((p, i) => {
      const q = points[(i + 1) % points.length]!;
      return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
    });
    const at = (p: { x: number; y: number }) => `${p.x} ${p.y}`;
    const text =
      sides === 'lines'
        ? points.map((p) => `${p.x},${p.y}`).join(' ')
        : sides === 'curves'
          ? // Quadratic curves from middle to middle: smooth all round.
            `M${at(mid.at(-1)!)} ${points.map((p, i) => `Q${at(p)} ${at(mid[i]!)}`).join(' ')} Z`
          : `M${at(points[0]!)} ${points
              .map((p, i) => {
                const q = points[(i + 1) % points.length]!;
                const r = 0.9 * Math.hypot(q.x - p.x, q.y - p.y);
                return `A${r} ${r} 0 0 1 ${at(q)}`;
              })
              .join(' ')} Z`;
    const read = readOutline(text, 1);
    if (!read.ok) throw new Error(`${read.message}: ${text}`);
    return read.path;
  });

const frame = fc.record({
  x: length(0, 300),
  y: length(0, 300),
  width: length(60, 400),
  height: length(60, 400),
});

/** Every shape of the table, with sizes that go with it. */
export const randomShape: fc.Arbitrary<RandomShape> = frame.chain((box) => {
  const least = Math.min(box.width, box.height);
  const square = { ...box, width: least, height: least };
  const choices: fc.Arbitrary<RandomShape>[] = [
    fc.constant({ kind: 'rectangle', frame: box, fields: {} }),
    length(1, 0.49 * least).map((radius) => ({ kind: 'rounded', frame: box, fields: { radius } })),
    fc
      .record({ notch: length(1, 0.11 * least), steps: fc.integer({ min: 1, max: 4 }) })
      .map((fields) => ({ kind: 'notched', frame: box, fields })),
    length(1, 0.49 * least).map((clip) => ({ kind: 'clipped', frame: box, fields: { clip } })),
    fc.constant({ kind: 'oval', frame: box, fields: {} }),
    fc.constant({ kind: 'circle', frame: square, fields: {} }),
    fc.constant({ kind: 'round-arch', frame: { ...box, height: box.width / 2 + box.height }, fields: {} }),
    length(2, 0.49 * box.width).map((rise) => ({
      kind: 'arch',
      frame: { ...box, height: rise + box.height },
      fields: { rise },
    })),
    fc
      .record({ sides: fc.integer({ min: 3, max: 12 }), stands: fc.constantFrom('side', 'corner') })
      .map((fields) => ({ kind: 'polygon', frame: box, fields })),
    freeOutline.map((outline) => ({ kind: 'outline', frame: square, fields: { outline } })),
  ];
  return fc.oneof(...choices);
});
