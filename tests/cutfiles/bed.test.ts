import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Blank, oneEach, together } from '../../src/cutfiles/bed.ts';
import { plainMachine } from '../../src/shop/machine.ts';

const room = (edge: number, apart: number) => ({ edge, apart: { width: apart, height: apart } });
const blank = (layer: number, width: number, height: number): Blank => ({
  layer,
  name: `mat ${layer}`,
  size: { width, height },
});
const machine = (width?: number, height?: number) => ({
  ...plainMachine('laser'),
  ...(width === undefined || height === undefined ? {} : { bed: { width, height } }),
});

describe('the bed', () => {
  it('holds a blank at its lower left corner', () => {
    const beds = oneEach([blank(1, 300, 200)], machine(600, 400), room(5, 0), false, 'mm');
    expect(beds).toMatchObject({
      value: [{ width: 600, height: 400, placings: [{ layer: 1, at: { x: 5, y: 195 } }] }],
    });
  });

  it('is as large as the blank and what lies around it, where it is not known', () => {
    const beds = oneEach([blank(1, 300, 200)], machine(), room(5, 0), true, 'mm');
    expect(beds).toMatchObject({
      value: [{ width: 210, height: 310, placings: [{ at: { x: 5, y: 5 }, turned: true }] }],
    });
  });

  it('says how much is missing, and whether turning helps', () => {
    const told = (width: number, height: number, turn: boolean) => {
      const beds = oneEach([blank(2, width, height)], machine(600, 400), room(0.1, 0), turn, 'mm');
      if (beds.ok) throw new Error('it should not fit');
      const [{ code, path, message, hint }] = beds.problems as [(typeof beds.problems)[number]];
      expect([code, path]).toEqual(['bed-small', ['mat', 'layers', 1]]);
      return `${message}; ${hint}`;
    };
    expect(told(300, 500, false)).toContain('100.2 mm up are missing; turned by a quarter it fits: --turn');
    expect(told(300, 500, false)).toContain('mat 2');
    expect(told(500, 300, true)).toContain('100.2 mm up are missing; it fits as it hangs: leave --turn out');
    expect(told(700, 500, false)).toContain('100.2 mm across and 100.2 mm up are missing; turning it does not help');
    const all = together(
      [blank(1, 700, 500), blank(2, 10, 10), blank(3, 800, 10)],
      machine(600, 400),
      room(0, 0),
      'mm',
    );
    expect(!all.ok && all.problems.length).toBe(2);
  });

  it('takes all blanks without one on another, each as far from the next as asked, inside of the bed', () => {
    const side = fc.integer({ min: 20, max: 380 });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(side, side), { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 0, max: 9 }),
        (sizes, gap) => {
          const blanks = sizes.map(([width, height], i) => blank(i + 1, width, height));
          const beds = together(blanks, machine(600, 400), room(2, gap), 'mm');
          if (!beds.ok) throw new Error('each of them fits');
          const found = beds.value.flatMap(({ placings }) => placings.map(({ layer }) => layer));
          expect(found.sort()).toEqual(blanks.map(({ layer }) => layer));
          for (const { placings, width, height } of beds.value) {
            const boxes = placings.map(({ layer, at, turned }) => {
              const { size } = blanks[layer - 1]!;
              return { ...at, w: turned ? size.height : size.width, h: turned ? size.width : size.height };
            });
            for (const [i, a] of boxes.entries()) {
              expect(Math.min(a.x, a.y)).toBeGreaterThanOrEqual(2 - 1e-9);
              expect(a.x + a.w).toBeLessThanOrEqual(width - 2 + 1e-9);
              expect(a.y + a.h).toBeLessThanOrEqual(height - 2 + 1e-9);
              for (const b of boxes.slice(i + 1)) {
                const aside = a.x + a.w + gap <= b.x + 1e-9 || b.x + b.w + gap <= a.x + 1e-9;
                const above = a.y + a.h + gap <= b.y + 1e-9 || b.y + b.h + gap <= a.y + 1e-9;
                expect(aside || above).toBe(true);
              }
            }
          }
        },
      ),
      { numRuns: 100 },
    );
  });

  it('turns a blank only where that saves a bed', () => {
    const two = together([blank(1, 280, 390), blank(2, 280, 390)], machine(600, 400), room(2, 5), 'mm');
    expect(two.ok && two.value.flatMap(({ placings }) => placings.map(({ turned }) => turned))).toEqual([false, false]);
    const one = together([blank(1, 390, 280)], machine(300, 400), room(2, 5), 'mm');
    expect(one.ok && one.value[0]!.placings[0]!.turned).toBe(true);
  });
});
