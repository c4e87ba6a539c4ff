import { reach, settingOf } from '../../bench/guide.ts';
import type { Rest, Stroke } from '../../bench/model.ts';
import { restOf } from '../../bench/rest.ts';
import type { CutStep, Lot } from '../../bench/work/model.ts';
import { work } from '../../bench/work/work.ts';
import { box } from '../../geometry/box.ts';
import { type Point, point, type Size } from '../../geometry/point.ts';
import { onOwnBoard } from '../../mat/own-board.ts';
import type { Solved } from '../../outputs/solve-job.ts';
import { mmFromInches, type Units } from '../../units/units.ts';
import type { Asks, CutEnds, LotBoard, Steps, Told } from './answers.ts';
import { solvedOf } from './solved.ts';

/** The order of work of one piece, or of several as one run. */
export async function steps({ jobs }: Asks['steps']['request']): Promise<Told<Steps>> {
  const solved = await solvedOf(jobs);
  if (!solved.ok) return { ok: false, problems: solved.problems };
  const order = work(solved.value);
  const boards = order.lots.map((lot) => boardOf(lot, solved.value[lot.job]!));
  const ends = order.steps.map((step) => {
    if (step.kind !== 'cut') return undefined;
    const { job } = solved.value[order.lots[step.lot]!.job]!;
    return endsOf(step, boards[step.lot]!, job.units);
  });
  const rests = order.steps.map((step) => {
    if (step.kind !== 'cut' || step.setting !== undefined || step.rest !== undefined) return undefined;
    const lot = order.lots[step.lot]!;
    const { strokes, job } = solved.value[lot.job]!;
    const stroke = strokes.find((each) => lot.work === 'opening' && each.order === step.stroke);
    return stroke === undefined ? undefined : laid(stroke, boards[step.lot]!, job.units);
  });
  return { ok: true, value: { order, boards, ends, rests }, problems: solved.warnings };
}

/** As it lies: the back is a mirrored face. */
function boardOf({ layer, up }: Lot, { mat, job }: Solved): LotBoard {
  const { outer, openings } = onOwnBoard(mat, job, layer - 1);
  const windows = openings.flatMap(({ layers }) => {
    const cut = layers[layer - 1];
    if (cut === undefined || cut.hidden === true) return [];
    const { x, y, width, height } = up === 'back' ? cut.backBox : cut.faceBox;
    return [box(up === 'back' ? outer.width - x - width : x, y, width, height)];
  });
  return { width: outer.width, height: outer.height, windows };
}

/** From the edge that a guide would rest on, to the straightedge. */
function laid({ face, direction, distance, straightedge, line }: Stroke, board: Size, units: Units): Rest | undefined {
  if (straightedge === undefined) return undefined;
  const off = (towards: Point): number => Math.abs(reach(board, face.from, towards) - distance);
  const [a, b] = [point(direction.y, -direction.x), point(-direction.y, direction.x)];
  return restOf(board, { bar: undefined, straightedge, line }, off(a) < off(b) ? a : b, units);
}

/** What a rule or the scale of a bar is read to: a 32nd of an inch, half a millimetre. */
const finest = (units: Units): number => (units === 'in' ? mmFromInches(1 / 32) : 0.5);

/** Only along an edge can they be measured from one. */
function endsOf({ start, stop }: CutStep, board: Size, units: Units): CutEnds | undefined {
  const [dx, dy] = [stop.x - start.x, stop.y - start.y];
  const far = Math.hypot(dx, dy);
  if (Math.min(Math.abs(dx), Math.abs(dy)) > 1e-6 * far) return undefined;
  const from = (p: { readonly x: number; readonly y: number }): number =>
    Math.abs(dx) > Math.abs(dy) ? (dx > 0 ? p.x : board.width - p.x) : dy > 0 ? p.y : board.height - p.y;
  return { start: settingOf(from(start), finest(units), units), stop: settingOf(from(stop), finest(units), units) };
}
