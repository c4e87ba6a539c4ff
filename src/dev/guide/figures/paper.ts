import { point } from '../../../geometry/point.ts';
import { area, box4, heading, label, measure, sketch, stroke } from '../sketch.ts';

const [SHEET, TALL, LAP] = [72, 52, 12];

function cross(x: number, y: number) {
  return [stroke('line', point(x - 2.5, y), point(x + 2.5, y)), stroke('line', point(x, y - 2.5), point(x, y + 2.5))];
}

/** Two sheets that lap: the join line in the middle of the lap, with its crosses. */
export function tiling() {
  const [x, y] = [12, 12];
  const join = x + SHEET - LAP / 2;
  return sketch('Two sheets and their join', 160, 84, [
    area(0.93, box4(x, y, SHEET, TALL), 'line'),
    area(0.97, box4(x + SHEET - LAP, y, SHEET, TALL), 'line'),
    stroke('hidden', point(x + SHEET, y), point(x + SHEET, y + TALL)),
    stroke('axis', point(join, y - 4), point(join, y + TALL + 4)),
    ...cross(join, y + 8),
    ...cross(join, y + TALL - 8),
    stroke('bold', point(x + 10, y + 20), point(x + 2 * SHEET - LAP - 10, y + 20)),
    stroke('bold', point(x + 24, y + 12), point(x + 24, y + 40)),
    heading('A1', x + 8, y + TALL - 6),
    heading('A2', x + SHEET + 44, y + TALL - 6),
    ...measure(point(x + SHEET - LAP, y + TALL + 8), point(x + SHEET, y + TALL + 8), 'lap', point(0, 5)),
    label('join line, crosses on it', join, y - 6, { anchor: 'middle' }),
  ]);
}

/** The same two sheets, laid edge to edge instead of cross on cross, and one turned a little. */
export function seams() {
  const one = (x: number, title: string, dx: number, dy: number) => [
    heading(title, x, 8),
    area(0.93, box4(x, 12, 40, 44), 'line'),
    area(0.97, box4(x + 40 + dx, 12 + dy, 36, 44), 'line'),
    ...cross(x + 37, 22),
    ...cross(x + 43 + dx, 22 + dy),
    stroke('bold', point(x + 4, 40), point(x + 40, 40)),
    stroke(dy === 0 ? 'bold' : 'wrong', point(x + 40 + dx, 40 + dy), point(x + 72 + dx, 40 + dy)),
  ];
  const good = (x: number) => [
    heading('joined', x, 8),
    area(0.93, box4(x, 12, 40, 44), 'line'),
    area(0.97, box4(x + 34, 12, 42, 44), 'line'),
    ...cross(x + 37, 22),
    stroke('bold', point(x + 4, 40), point(x + 72, 40)),
  ];
  return sketch('Seams', 178, 64, [good(6), one(94, 'edge to edge, and a step', 2, 2.4)]);
}

/** Check lines that printed at full scale, fitted from A4 to Letter, and fitted from Letter to A4. */
export function checkLines() {
  const line = (y: number, length: number, text: string, name: 'bold' | 'wrong') => [
    stroke(name, point(8, y), point(8 + length, y)),
    stroke(name, point(8, y - 2.5), point(8, y + 2.5)),
    stroke(name, point(8 + length, y - 2.5), point(8 + length, y + 2.5)),
    label(text, 112, y + 1.2, { wrong: name === 'wrong' }),
  ];
  return sketch('Check lines of 100 mm', 190, 40, [
    line(8, 100, '100 mm: at full scale', 'bold'),
    line(20, 97.3, '97.3 mm: made for Letter, fitted to A4', 'wrong'),
    line(32, 94.1, '94.1 mm: made for A4, fitted to Letter', 'wrong'),
  ]);
}
