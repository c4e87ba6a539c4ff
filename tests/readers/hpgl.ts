/**
 * A plotter that obeys the instructions which the project may write, and refuses every other: from HP's published list
 * (PCL 5 Technical Reference Manual, part II: CO, IN, PA, PU, PD, SP, VS). Lengths come out in plotter units.
 */
export interface PlottedLine {
  readonly pen: number;
  /** cm/s, where it was set. */
  readonly speed: number | undefined;
  readonly points: readonly (readonly [number, number])[];
}

export interface Plotted {
  readonly lines: readonly PlottedLine[];
  readonly comments: readonly string[];
  /** At the end of the file. */
  readonly penUp: boolean;
  readonly pen: number;
  readonly at: readonly [number, number];
}

const INSTRUCTION = /\s*([A-Z]{2})((?:\s*"(?:[^"]|"")*")|[^";A-Z]*);?\s*/gy;

export function plot(text: string): Plotted {
  const lines: { pen: number; speed: number | undefined; points: [number, number][] }[] = [];
  const comments: string[] = [];
  let [pen, up] = [0, true];
  let speed: number | undefined;
  let at: [number, number] = [0, 0];
  let initialized = false;
  let line: (typeof lines)[number] | undefined;
  INSTRUCTION.lastIndex = 0;
  let end = 0;
  for (const [whole, name, rest] of text.matchAll(INSTRUCTION)) {
    end += whole.length;
    const numbers = rest!.trim() === '' || rest!.includes('"') ? [] : rest!.split(',').map(Number);
    if (numbers.some((n) => !Number.isInteger(n))) throw new Error(`${name}${rest} holds what is no plotter unit`);
    if (name !== 'CO' && name !== 'IN' && !initialized) throw new Error(`${name} comes before IN`);
    switch (name) {
      case 'CO':
        comments.push(rest!.trim().slice(1, -1));
        break;
      case 'IN':
        [pen, up, speed, at, initialized, line] = [0, true, undefined, [0, 0], true, undefined];
        break;
      case 'PA':
        break;
      case 'SP':
        [pen, line] = [numbers[0] ?? 0, undefined];
        if (!up) throw new Error('a pen is changed while it is down');
        break;
      case 'VS':
        speed = numbers[0];
        break;
      case 'PU':
      case 'PD':
        up = name === 'PU';
        if (up) line = undefined;
        if (numbers.length % 2 === 1) throw new Error(`${name} with half a point`);
        for (let i = 0; i < numbers.length; i += 2) {
          const to: [number, number] = [numbers[i]!, numbers[i + 1]!];
          if (!up) {
            if (pen === 0) throw new Error('it plots without a pen');
            if (line === undefined) {
              line = { pen, speed, points: [at] };
              lines.push(line);
            }
            line.points.push(to);
          }
          at = to;
        }
        break;
      default:
        throw new Error(`${name} is not known to this plotter`);
    }
  }
  if (end !== text.length) throw new Error(`it stops at ${JSON.stringify(text.slice(end, end + 20))}`);
  return { lines, comments, penUp: up, pen, at };
}
