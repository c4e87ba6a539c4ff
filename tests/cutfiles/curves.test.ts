import { describe, expect, it } from 'vitest';
import { moved, points } from '../simulate/figure.ts';
import { beds, type Format } from '../simulate/machines.ts';
import { Near } from '../simulate/near.ts';

const JOB = {
  text: 'units: mm\nmat: {outer: 300 x 220, layers: [{board: {thickness: 1.5}, bevel: 90}]}\nopenings: [{shape: oval, size: 200 x 100}]\n',
  layers: [{ thickness: 1.5, angle: 90, reverse: false, reveal: 0 }],
};

describe('curves in a file for a machine of which nothing else is said', () => {
  it.each<[Format, number]>([
    ['svg', 0.0006],
    // Arcs and chords within 0.01 mm; a plotter's points are half a unit off each way besides.
    ['dxf', 0.0101],
    ['hpgl', 0.0101 + 0.0125 * Math.SQRT2],
  ])('are as near as they are said to be: %s', async (format, allowed) => {
    const words = `machines: {m: {kind: laser, format: ${format}, outside: false, marks: false, notes: false, kerf: 0.2}}\n`;
    const [bed] = (await beds(JOB, { words, format, outside: false }))!;
    const [way] = bed!.ways;
    // The beam runs half of its kerf inside.
    const true_ = points(moved({ kind: 'oval', centre: { x: 150, y: 110 }, a: 100, b: 50, by: 0 }, -0.1), 0.01);
    const [edge, drawn] = [new Near(1).chain(true_, true), new Near(1).chain(way!.points, true)];
    expect(Math.max(...way!.points.map((p) => edge.distance(p)))).toBeLessThan(allowed);
    expect(Math.max(...true_.map((p) => drawn.distance(p)))).toBeLessThan(allowed);
  });
});
