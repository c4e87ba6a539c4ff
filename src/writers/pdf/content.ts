import { penOf } from '../../drawing/bounds.ts';
import type { Item, LineItem, PathItem, Pen, PictureItem, TextItem } from '../../drawing/model.ts';
import { arcCubics } from '../../geometry/arc-cubics.ts';
import type { Path } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { pointsFromMm } from '../../units/units.ts';
import { rgb } from '../colour.ts';
import { decimal } from '../decimal.ts';

/** Content is in points, x right, y up, as PDF's own axes run; four digits are 0.00002 mm. */
export const points = (mm: number): string => decimal(pointsFromMm(mm), 4);

/** What content asks of the file that it stands in: names in its resources. */
export interface Resources {
  /** The words as runs of glyphs, one after the other along the base line; their glyphs are from now on used. */
  runs(text: string, weight: TextItem['weight']): readonly ShownRun[];
  /** The name of a picture; an unknown one throws. */
  picture(id: string): string;
}

/** A run as it stands in content. */
export interface ShownRun {
  /** The font's name in the resources. */
  readonly font: string;
  /** The glyphs' numbers, hexadecimal. */
  readonly glyphs: string;
  /** How wide it is, em. */
  readonly advance: number;
}

/** Paints items one after the other, saying a pen or a colour only where it changes. */
export class Content {
  readonly #parts: string[] = [];
  readonly #pens: Readonly<Record<string, Pen>>;
  readonly #resources: Resources;
  /** Height of the page or form, mm: y is counted from its bottom. */
  readonly #height: number;
  #pen: Pen | undefined;
  #fill = '';

  constructor(height: number, pens: Readonly<Record<string, Pen>>, resources: Resources) {
    this.#height = height;
    this.#pens = pens;
    this.#resources = resources;
  }

  toString(): string {
    return this.#parts.join('\n');
  }

  /** Operators as they are, which leave pen and colour as they found them. */
  raw(operators: string): void {
    this.#parts.push(operators);
  }

  items(items: readonly Item[]): void {
    for (const item of items) this.#item(item);
  }

  #item(item: Item): void {
    switch (item.kind) {
      case 'line':
        this.#line(item);
        break;
      case 'path':
        this.#path(item);
        break;
      case 'text':
        this.#text(item);
        break;
      case 'picture':
        this.#picture(item);
        break;
      default: {
        const never: never = item;
        throw new TypeError(`unknown item ${JSON.stringify(never)}`);
      }
    }
  }

  #at(p: Point): string {
    return `${points(p.x)} ${points(this.#height - p.y)}`;
  }

  #usePen(name: string): void {
    const pen = penOf(name, this.#pens);
    if (pen === this.#pen) return;
    const round = pen.cap === 'round' ? 1 : 0;
    const dash = pen.dash.map(points).join(' ');
    this.#parts.push(`${points(pen.width)} w ${round} J ${round} j [${dash}] 0 d ${colour(pen.colour, 'G', 'RG')}`);
    this.#pen = pen;
  }

  #useFill(value: number | string): void {
    const fill = colour(value, 'g', 'rg');
    if (fill === this.#fill) return;
    this.#parts.push(fill);
    this.#fill = fill;
  }

  #line(item: LineItem): void {
    this.#usePen(item.pen);
    this.#parts.push(`${this.#at(item.from)} m ${this.#at(item.to)} l S`);
  }

  #path(item: PathItem): void {
    if (item.pen !== undefined) this.#usePen(item.pen);
    if (item.fill !== undefined) this.#useFill(item.fill);
    const outline = item.paths.map((path) => this.#outline(path)).join(' ');
    const rule = item.rule === 'nonzero' ? '' : '*';
    const painted = item.pen === undefined ? `f${rule}` : `B${rule}`;
    const unfilled = item.pen === undefined ? 'n' : 'S';
    this.#parts.push(`${outline} ${item.fill === undefined ? unfilled : painted}`);
  }

  #outline(path: Path): string {
    const steps = [`${this.#at(path.start)} m`];
    let from = path.start;
    path.segments.forEach((segment, i) => {
      switch (segment.kind) {
        case 'line':
          // The side back to the start is what `h` draws.
          if (!(path.closed && i === path.segments.length - 1)) steps.push(`${this.#at(segment.to)} l`);
          break;
        case 'arc':
          for (const { c1, c2, to } of arcCubics(from, segment)) {
            steps.push(`${this.#at(c1)} ${this.#at(c2)} ${this.#at(to)} c`);
          }
          break;
        case 'cubic':
          steps.push(`${this.#at(segment.c1)} ${this.#at(segment.c2)} ${this.#at(segment.to)} c`);
          break;
        default: {
          const never: never = segment;
          throw new TypeError(`unknown segment ${JSON.stringify(never)}`);
        }
      }
      from = segment.to;
    });
    if (path.closed) steps.push('h');
    return steps.join(' ');
  }

  #text(item: TextItem): void {
    const runs = this.#resources.runs(item.text, item.weight);
    if (runs.length === 0) return;
    const advance = runs.reduce((sum, run) => sum + run.advance, 0);
    this.#useFill(item.colour);
    const { cos, sin, matrix } = turnOf(item.turn);
    const back = ANCHOR[item.anchor] * advance * item.size;
    const start = this.#at({ x: item.at.x - back * cos, y: item.at.y - back * sin });
    const size = points(item.size);
    let shown = '';
    for (const { font, glyphs } of runs) shown += ` /${font} ${size} Tf <${glyphs}> Tj`;
    this.#parts.push(`BT ${matrix} ${start} Tm${shown} ET`);
  }

  #picture(item: PictureItem): void {
    const { x, y, width, height } = item.box;
    const corner = this.#at({ x, y: y + height });
    this.#parts.push(
      `q ${points(width)} 0 0 ${points(height)} ${corner} cm /${this.#resources.picture(item.picture)} Do Q`,
    );
  }
}

interface Turn {
  readonly cos: number;
  readonly sin: number;
  readonly matrix: string;
}

/** Nearly all words stand upright or are turned by quarters. */
const TURNS = new Map<number, Turn>();
const MOST_TURNS = 200;

/** A turn clockwise to the eye is a negative one where y runs up. */
function turnOf(degrees: number): Turn {
  const known = TURNS.get(degrees);
  if (known !== undefined) return known;
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const matrix = [cos, -sin, sin, cos].map((part) => decimal(part, 7)).join(' ');
  const turn = { cos, sin, matrix };
  if (TURNS.size >= MOST_TURNS) TURNS.clear();
  TURNS.set(degrees, turn);
  return turn;
}

/** How much of its width a text lies before its point. */
const ANCHOR: Readonly<Record<TextItem['anchor'], number>> = { start: 0, middle: 0.5, end: 1 };

function colour(value: number | string, grey: string, colours: string): string {
  if (typeof value === 'number') return `${decimal(value, 4)} ${grey}`;
  return `${rgb(value)
    .map((part) => decimal(part / 255, 4))
    .join(' ')} ${colours}`;
}
