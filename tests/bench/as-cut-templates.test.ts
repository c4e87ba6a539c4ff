import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Solved, solveJob } from '../../src/index.ts';
import { shapeOf } from '../../src/shapes/shapes.ts';
import { FONTS } from '../fonts/loaded.ts';

const NAMES = readdirSync('templates').filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml');

function solved(text: string): Solved {
  const made = solveJob(text, { fonts: FONTS, file: 'job.yaml' });
  if (!made.ok) throw new Error(JSON.stringify(made.problems, null, 1));
  return made.value;
}

const size = ({ width, height }: { width: number; height: number }): string => `[${width} mm, ${height} mm]`;

/** Everything cut as it was planned, down to the second layer. */
function asPlanned({ mat }: Solved): string {
  const openings = mat.openings.flatMap((opening, o) =>
    shapeOf(opening.shape).growsUnevenly === true
      ? []
      : opening.layers
          .slice(0, 2)
          .flatMap((layer, k) =>
            layer.hidden === true ? [] : [`{opening: ${o + 1}, layer: ${k + 1}, size: ${size(layer.faceBox)}}`],
          ),
  );
  const blanks = mat.layers.map((layer, index) => (index === 0 ? '{}' : `{blank: ${size(layer.blank)}}`));
  return `asCut: {outer: ${size(mat.outer)}, layers: [${blanks.join(', ')}], openings: [${openings.join(', ')}]}\n`;
}

describe('every starter job with what was cut as it was planned', () => {
  it.each(NAMES)('%s: nothing is changed', (name) => {
    const text = readFileSync(`templates/${name}`, 'utf8');
    const before = solved(text);
    const after = solved(text + asPlanned(before));
    expect(after.mat.changed).toEqual([]);
    expect(after.strokes.filter((stroke) => stroke.planned !== undefined)).toEqual([]);
    for (const [i, stroke] of after.strokes.entries()) {
      expect(stroke.start.x).toBeCloseTo(before.strokes[i]!.start.x, 6);
      expect(stroke.stop.y).toBeCloseTo(before.strokes[i]!.stop.y, 6);
      expect(stroke.guide).toBeCloseTo(before.strokes[i]!.guide, 6);
    }
  });

  it.each(NAMES)('%s: a blank 1/32 in over leaves openings and artwork as they are', (name) => {
    const text = readFileSync(`templates/${name}`, 'utf8');
    const before = solved(text);
    const { width, height } = before.mat.outer;
    const made = solveJob(`${text}asCut: {outer: ${size({ width: width + 25.4 / 32, height })}}\n`, {
      fonts: FONTS,
      file: 'job.yaml',
    });
    if (!made.ok) throw new Error(JSON.stringify(made.problems, null, 1));
    expect(made.value.mat.outer.width).toBeCloseTo(width + 25.4 / 32, 6);
    made.value.mat.openings.forEach((opening, o) => {
      const was = before.mat.openings[o]!;
      if (before.job.bench.snap) return;
      expect(opening.sight.height).toBeCloseTo(was.sight.height, 6);
      if (opening.artwork === undefined || opening.artwork.floated) return;
      for (const overlap of Object.values(opening.artwork.overlap)) expect(overlap).toBeGreaterThan(1.9);
    });
    expect(made.value.mat.changed!.length).toBeGreaterThan(0);
  });
});
