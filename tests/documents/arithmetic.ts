/**
 * What a pattern must show, worked out by hand from the numbers of the mat: nothing here comes from the engine.
 * Back view, mm from the board's top left as seen there; sides are named from the face.
 */
export interface Numbers {
  readonly width: number;
  readonly height: number;
  /** Board's edge to the face line, as named from the face. */
  readonly border: { readonly top: number; readonly right: number; readonly bottom: number; readonly left: number };
  readonly thickness: number;
  readonly angle: number;
  readonly reverse?: boolean;
  readonly hand?: 'left' | 'right';
  readonly start: number;
  readonly stop: number;
  readonly overrun: number;
  /** Thickness of paper that stays on. */
  readonly paper?: number;
  /** From the board's edge to where the paper is trimmed. */
  readonly inset: number;
}

export interface Expected {
  readonly what: string;
  readonly dash: readonly number[];
  readonly from: { readonly x: number; readonly y: number };
  readonly to: { readonly x: number; readonly y: number };
}

const at = (x: number, y: number) => ({ x, y });
const MARK = [2.5, 0.8];
const FACE = [0.5, 1.5];
const CENTRE = [5, 1, 1.2, 1];
const EDGE = [7, 1.5, 1, 1.5];

/** Marks 40 mm long on either side; the face line stops 60 mm short of the corners. */
export function expectedLines(n: Numbers): readonly Expected[] {
  // Seen from the back the face's right border lies at the left.
  const [x0, x1] = [n.border.right, n.width - n.border.left];
  const [y0, y1] = [n.border.top, n.height - n.border.bottom];
  const away = (n.thickness + (n.paper ?? 0)) / Math.tan((n.angle * Math.PI) / 180);
  const s = n.reverse === true ? -away : away;
  const [cx0, cx1, cy0, cy1] = [x0 + s, x1 - s, y0 + s, y1 - s];
  // A reverse bevel swaps the hand; with the opening on the left the travel runs counterclockwise.
  const counter = ((n.hand ?? 'left') === 'left') !== (n.reverse === true);
  const before = n.start + n.overrun;
  const after = -n.stop + n.overrun;

  const lines: Expected[] = [];
  const add = (what: string, dash: readonly number[], from: Expected['from'], to: Expected['to']) => {
    lines.push({ what, dash, from, to });
  };
  add('cut top', [], at(cx1, cy0), at(cx0, cy0));
  add('cut right', [], at(cx0, cy0), at(cx0, cy1));
  add('cut bottom', [], at(cx0, cy1), at(cx1, cy1));
  add('cut left', [], at(cx1, cy1), at(cx1, cy0));

  if (Math.abs(s) > 0.7) {
    if (x1 - x0 > 130) {
      add('face top', FACE, at(x1 - 60, y0), at(x0 + 60, y0));
      add('face bottom', FACE, at(x0 + 60, y1), at(x1 - 60, y1));
    }
    if (y1 - y0 > 130) {
      add('face right', FACE, at(x0, y0 + 60), at(x0, y1 - 60));
      add('face left', FACE, at(x1, y1 - 60), at(x1, y0 + 60));
    }
  }

  // Where the travel starts and stops, along each side.
  const [lowX, highX] = counter ? [x0 + n.stop - n.overrun, x1 + before] : [x0 - before, x1 + after];
  const [lowXb, highXb] = counter ? [x0 - before, x1 + after] : [x0 + n.stop - n.overrun, x1 + before];
  const [lowYr, highYr] = counter ? [y0 - before, y1 + after] : [y0 + n.stop - n.overrun, y1 + before];
  const [lowYl, highYl] = counter ? [y0 + n.stop - n.overrun, y1 + before] : [y0 - before, y1 + after];
  // A tick that would run along a neighbouring cut line is drawn on the border side alone.
  const inner = (mark: number, low: number, high: number) =>
    Math.min(Math.abs(mark - low), Math.abs(mark - high)) < 0.8 ? 0 : 40;
  const level = (what: string, x: number, cut: number, out: -1 | 1) => {
    add(what, MARK, at(x, cut + out * 40), at(x, cut - out * inner(x, cx0, cx1)));
  };
  const upright = (what: string, y: number, cut: number, out: -1 | 1) => {
    add(what, MARK, at(cut + out * 40, y), at(cut - out * inner(y, cy0, cy1), y));
  };
  level('tick top low', lowX, cy0, -1);
  level('tick top high', highX, cy0, -1);
  level('tick bottom low', lowXb, cy1, 1);
  level('tick bottom high', highXb, cy1, 1);
  upright('tick right low', lowYr, cx0, -1);
  upright('tick right high', highYr, cx0, -1);
  upright('tick left low', lowYl, cx1, 1);
  upright('tick left high', highYl, cx1, 1);

  const [w, h] = [n.width, n.height];
  add('edge upper', EDGE, at(0, 0), at(w, 0));
  add('edge right', EDGE, at(w, 0), at(w, h));
  add('edge lower', EDGE, at(w, h), at(0, h));
  add('edge left', EDGE, at(0, h), at(0, 0));
  add('centre upper', CENTRE, at(w / 2, 0), at(w / 2, n.inset + 10));
  add('centre right', CENTRE, at(w, h / 2), at(w - n.inset - 10, h / 2));
  add('centre lower', CENTRE, at(w / 2, h), at(w / 2, h - n.inset - 10));
  add('centre left', CENTRE, at(0, h / 2), at(n.inset + 10, h / 2));
  return lines;
}
