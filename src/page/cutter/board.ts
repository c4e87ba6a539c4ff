import { type ComponentChild, h } from 'preact';
import type { CutStep } from '../../bench/work/model.ts';
import type { LotBoard } from '../engine/answers.ts';

/**
 * The board as it lies before the one who cuts: turned so that the cut runs towards the body, the edge on the guide thick,
 * an arrow from start to stop, and TOP where it has come to lie.
 */
export function Board({ step, board }: { readonly step: CutStep; readonly board: LotBoard }): ComponentChild {
  const { width, height, windows } = board;
  const { start, stop, line, edge } = step;
  const turn = turnOf(step);
  const long = Math.hypot(width, height);
  const [cx, cy] = [width / 2, height / 2];
  const head = long * 0.028;
  // TOP stands outside its edge, where no line runs; turned, its letters lie across.
  const letter = long * 0.05;
  const away = -letter * (quarter(turn) % 2 === 0 ? 0.6 : 1.15);
  return h(
    'svg',
    {
      class: 'board',
      viewBox: `${cx - long / 2} ${cy - long / 2} ${long} ${long}`,
      role: 'img',
      'aria-label': `The board as it lies: TOP ${TOPS[quarter(turn)]}, the cut runs towards you`,
    },
    h('g', { transform: `rotate(${turn} ${cx} ${cy})` }, [
      h('rect', { key: 'board', class: 'blank', x: 0, y: 0, width, height }),
      ...windows.map(({ x, y, width: w, height: tall }, i) =>
        h('rect', { key: `window ${i}`, class: 'window', x, y, width: w, height: tall }),
      ),
      edge === undefined ? null : h('line', { key: 'guide', class: 'guide', ...edgeOf(edge, board) }),
      h('line', { key: 'line', class: 'line', x1: line.from.x, y1: line.from.y, x2: line.to.x, y2: line.to.y }),
      h('line', { key: 'cut', class: 'cut', x1: start.x, y1: start.y, x2: stop.x, y2: stop.y }),
      h('path', { key: 'arrow', class: 'arrow', d: arrow(step, head) }),
      h('circle', { key: 'start', class: 'begin', cx: start.x, cy: start.y, r: head * 0.5 }),
      h(
        'text',
        {
          key: 'top',
          class: 'top',
          x: cx,
          y: away + letter * 0.35,
          'font-size': letter,
          'text-anchor': 'middle',
          transform: `rotate(${-turn} ${cx} ${away})`,
        },
        'TOP',
      ),
    ]),
  );
}

/** Degrees clockwise from TOP up to how it lies, so that the cut runs down the screen. */
function turnOf({ start, stop }: CutStep): number {
  const degrees = (Math.atan2(stop.y - start.y, stop.x - start.x) * 180) / Math.PI;
  return Math.round((90 - degrees) * 100) / 100;
}

const quarter = (turn: number): number => ((Math.round(turn / 90) % 4) + 4) % 4;

/** Where TOP lies after so many quarter turns clockwise. */
const TOPS = ['away from you', 'to the right', 'towards you', 'to the left'] as const;
export const topWords = (step: CutStep): string => `TOP ${TOPS[quarter(turnOf(step))]}`;

function edgeOf(edge: NonNullable<CutStep['edge']>, { width, height }: LotBoard) {
  switch (edge) {
    case 'top':
      return { x1: 0, y1: 0, x2: width, y2: 0 };
    case 'right':
      return { x1: width, y1: 0, x2: width, y2: height };
    case 'bottom':
      return { x1: 0, y1: height, x2: width, y2: height };
    case 'left':
      return { x1: 0, y1: 0, x2: 0, y2: height };
    default: {
      const never: never = edge;
      throw new TypeError(`unknown edge ${JSON.stringify(never)}`);
    }
  }
}

function arrow({ start, stop }: CutStep, size: number): string {
  const far = Math.hypot(stop.x - start.x, stop.y - start.y);
  const [dx, dy] = [(stop.x - start.x) / far, (stop.y - start.y) / far];
  const at = (along: number, across: number): string =>
    `${(stop.x + dx * along - dy * across).toFixed(2)} ${(stop.y + dy * along + dx * across).toFixed(2)}`;
  return `M${at(0, 0)}L${at(-2 * size, size)}L${at(-2 * size, -size)}Z`;
}
