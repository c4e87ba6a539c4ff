import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { squared } from '../../src/cutfiles/square.ts';
import { flattened } from '../../src/geometry/flatten.ts';
import { solveJob } from '../../src/index.ts';
import { solve } from '../../src/mat/solve.ts';
import { FONTS } from '../fonts/loaded.ts';
import { cut } from './cut.ts';
import { apart, Chain, dense, type P } from './points.ts';
import { waysOf } from './read-svg.ts';

const TEMPLATES = join(import.meta.dirname, '../../templates');
const names = readdirSync(TEMPLATES).filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml');
const boards = readFileSync(join(TEMPLATES, 'shop.yaml'), 'utf8');
const KERF = 0.2;

/** Every opening of a layer as a machine sees it: mirrored where the back is up, turned where it is laid so. */
function expected(job: string, shop: string, layer: number, up: 'back' | 'face', turn: boolean): P[][] {
  const solved = solveJob(job, { fonts: FONTS, shop: { text: shop, file: 'shop.yaml' } });
  if (!solved.ok) throw new Error('a template is a good job');
  const mat = solve(squared(solved.value.job), { fonts: FONTS });
  if (!mat.ok) throw new Error('a template can be cut square');
  const { outer, layers, openings, lettering = [] } = mat.value;
  const letters = layer === 0 ? lettering.flatMap(({ parts }) => parts.map(({ face }) => face)) : [];
  const { trimBack, blank } = layers[layer]!;
  return [...openings.map((opening) => opening.layers[layer]!.face), ...letters].map((face) =>
    flattened(face, 1e-3).map(({ x, y }) => {
      const seen = { x: (up === 'back' ? outer.width - x : x) - trimBack, y: y - trimBack };
      // A quarter turn clockwise: what was at the left is now at the top.
      const lies = turn ? { x: blank.height - seen.y, y: seen.x } : seen;
      return { x: lies.x + KERF / 2, y: lies.y + KERF / 2 };
    }),
  );
}

describe.each(names)('%s, cut by a laser', (name) => {
  const job = readFileSync(join(TEMPLATES, name), 'utf8');

  it.each([
    ['back', false],
    ['face', true],
  ] as const)(
    'has every opening of every layer half a kerf inside its outline, %s up, turned: %s',
    async (up, turn) => {
      const shop = `${boards}\nmachines: {laser: {kerf: ${KERF} mm, up: ${up}, marks: false, notes: false}}\n`;
      const { texts } = await cut(job, shop, { machine: 'laser', turn });
      for (const [layer, text] of texts.entries()) {
        const inner = waysOf(text).filter((way) => way.layer === 'inner');
        const outlines = expected(job, shop, layer, up, turn);
        expect(inner.length).toBe(outlines.length);
        for (const outline of outlines) {
          const edge = new Chain(dense(outline, 0.5, true));
          const own = inner.filter(({ points }) => points.every((p) => edge.distance(p) < 1));
          expect(own.length).toBe(1);
          for (const p of dense(own[0]!.points, 3, true)) {
            // Round a corner that points into the opening the way has its own, half a kerf away in both directions.
            const corner = outline.some((c) => apart(c, p) < KERF) ? Math.SQRT2 : 1;
            expect(edge.distance(p)).toBeGreaterThan(KERF / 2 - 0.002);
            expect(edge.distance(p)).toBeLessThan((corner * KERF) / 2 + 0.002);
          }
        }
      }
    },
  );
});
