import { describe, expect, it } from 'vitest';
import { tickets } from '../../src/documents/ticket/tickets.ts';
import { solveJob } from '../../src/index.ts';
import { FONTS } from '../fonts/loaded.ts';
import { margined } from './margined.ts';

/** Four borders that are all different, so that each side is a setting of its own. */
const JOB = `units: mm
mat: {border: {left: 50, right: 60, top: 70, bottom: 80}}
openings: [{size: 140 x 200}]
bench: {head: h}
`;

/** Degrees clockwise that a way runs, 0 up; y runs down. */
const facing = ({ x, y }: { readonly x: number; readonly y: number }): number =>
  ((Math.atan2(x, -y) * 180) / Math.PI + 360) % 360;

describe('the turns on a ticket', () => {
  it.each(['left', 'right'])(
    'are drawn the way the board is turned until the next stroke runs towards the body: opening on the %s',
    (hand) => {
      const solved = solveJob(JOB, {
        shop: { text: `heads: {h: {bevel: 45, opening: ${hand}}}\n`, file: 'shop.yaml' },
      });
      if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
      const { sheets } = tickets([solved.value], { fonts: FONTS, paper: margined({ width: 210, height: 297 }) });
      const items = sheets[0]!.groups.flatMap((group) => group.items);
      // Behind `¼ turn` stands its arrow, then the number of the stroke that is turned to.
      const drawn = items.flatMap((item, i) => {
        if (item.kind !== 'text' || !/^[¼¹]/.test(item.text) || !item.text.endsWith('turn')) return [];
        const [arrow, , , number] = items.slice(i + 1, i + 5);
        const arc = arrow?.kind === 'path' ? arrow.paths[0]!.segments[0] : undefined;
        if (arc?.kind !== 'arc' || number?.kind !== 'text') throw new Error('no arrow or no number behind a turn');
        return [{ order: Number(number.text), clockwise: arc.clockwise }];
      });
      const strokes = [...solved.value.strokes].sort((a, b) => a.order - b.order);
      const wanted = strokes.slice(1).flatMap((stroke, i) => {
        // The board is turned against the way that its stroke would have to turn to run as the one before.
        const by = ((((facing(strokes[i]!.direction) - facing(stroke.direction)) % 360) + 540) % 360) - 180;
        return Math.abs(Math.abs(by) - 90) < 1e-6 ? [{ order: stroke.order, clockwise: by > 0 }] : [];
      });
      expect(wanted.length).toBeGreaterThan(1);
      expect(drawn.filter(({ order }) => order > 1)).toEqual(wanted);
    },
  );
});
