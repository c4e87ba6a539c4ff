import { describe, expect, it } from 'vitest';
import { bevel } from '../../src/cutfiles/bevel.ts';
import { bevelCoupon } from '../../src/cutfiles/coupons/bevel.ts';
import { laser } from '../../src/cutfiles/laser.ts';
import type { CutJob } from '../../src/cutfiles/model.ts';
import { type Path, polygon } from '../../src/geometry/path.ts';
import { solveJob } from '../../src/index.ts';
import { showProblem } from '../../src/problems/show.ts';
import { shapeOf } from '../../src/shapes/shapes.ts';
import type { BevelMachine, LaserMachine } from '../../src/shop/machine.ts';
import { plainMachine } from '../../src/shop/machine.ts';
import { FONTS } from '../fonts/loaded.ts';
import { LOPSIDED } from './cut.ts';

const solved = solveJob(LOPSIDED.replace('bevel: 90', 'bevel: 45'));
if (!solved.ok) throw new Error('no good job');
const cutJob: CutJob = { ...solved.value, fonts: FONTS };
const board = (outline: Path) => ({
  ...bevelCoupon(cutJob.mat.layers[0]!.board),
  openings: [{ id: 'opening-1', path: ['openings', 0], name: 'opening 1', face: outline, back: outline }],
});

describe('openings that a machine cannot cut', () => {
  it('a neck narrower than the kerf', () => {
    const neck = polygon([
      { x: 0, y: 0 },
      { x: 40, y: 0 },
      { x: 40, y: 19.9 },
      { x: 80, y: 19.9 },
      { x: 80, y: 0 },
      { x: 120, y: 0 },
      { x: 120, y: 40 },
      { x: 80, y: 40 },
      { x: 80, y: 20.1 },
      { x: 40, y: 20.1 },
      { x: 40, y: 40 },
      { x: 0, y: 40 },
    ]);
    const machine = { ...(plainMachine('laser') as LaserMachine), marks: false };
    const told = (kerf: number): string => {
      const made = laser.toolpaths(board(neck), cutJob, { ...machine, kerf: { x: kerf, y: kerf } });
      return made.ok ? '' : made.problems.map(showProblem).join('\n');
    };
    expect(told(0.1)).toBe('');
    expect(told(0.3)).toContain('is nowhere wide enough for a kerf of 0.3 mm, or falls apart with it');
  });

  it('a bend tighter than the bevel is wide', () => {
    const machine = plainMachine('bevel') as BevelMachine;
    const told = (radius: number): string => {
      const outline = shapeOf('rounded').outline({ x: 0, y: 0, width: 60, height: 80 }, { radius });
      const made = bevel.toolpaths(board(outline), cutJob, machine);
      return made.ok ? '' : made.problems.map(showProblem).join('\n');
    };
    expect(told(5)).toBe('');
    expect(told(1)).toContain('a bend that is tighter than its bevel is wide');
  });
});
