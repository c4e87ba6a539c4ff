/** Made-up wholesale orders: a few dozen different blanks, each wanted many times, from equal sheets. */
import type { StockInput } from '../../src/stock/planner/model.ts';
import { randomSource } from './random.ts';

export interface Order {
  readonly name: string;
  readonly input: StockInput;
}

/** Sides as shares of the sheet's: of the blank's shorter and longer side, or any way round. */
interface OrderClass {
  readonly name: string;
  readonly sides: (pick: (least: number, most: number) => number) => readonly [number, number];
}

const CLASSES: readonly OrderClass[] = [
  { name: 'large', sides: (pick) => [pick(0.25, 0.75), pick(0.25, 0.75)] },
  { name: 'small', sides: (pick) => [pick(0.12, 0.4), pick(0.12, 0.4)] },
  { name: 'long', sides: (pick) => [pick(0.08, 0.3), pick(0.4, 0.95)] },
  {
    name: 'mixed',
    sides: (pick) => (pick(0, 1) < 0.3 ? [pick(0.4, 0.8), pick(0.3, 0.7)] : [pick(0.12, 0.4), pick(0.15, 0.5)]),
  },
];

const SHEETS = [
  [512, 640],
  [250, 250],
  [1000, 1000],
  [700, 1200],
] as const;

const KINDS = [10, 20, 30, 50, 60];
const INCHES_16 = 1.5875;

/** Each class with each number of kinds on each sheet; `turn` as asked. */
export function orders(turn: boolean): readonly Order[] {
  return CLASSES.flatMap((each, c) =>
    KINDS.map((kinds, k) => {
      const [width, height] = SHEETS[(c + k) % SHEETS.length]!;
      const random = randomSource(1000 * c + 10 * kinds + (turn ? 1 : 0));
      const whole = (least: number, most: number): number => Math.round(random.between(least, most));
      const unit = width === 512 ? INCHES_16 : 1;
      const pieces = Array.from({ length: kinds }, (_, i) => {
        const [a, b] = each.sides((least, most) => random.between(least, most));
        const across = random.between(0, 1) < 0.5;
        const [w, h] = across ? [a, b] : [b, a];
        return {
          id: String(i),
          width: Math.max(1, Math.round(w * width)) * unit,
          height: Math.max(1, Math.round(h * height)) * unit,
          count: whole(1, 100),
          turn,
        };
      });
      return {
        name: `${each.name} ${kinds} on ${width} × ${height}`,
        input: { sheets: [{ id: 'sheet', width: width * unit, height: height * unit }], pieces },
      };
    }),
  );
}
