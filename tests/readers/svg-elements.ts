/**
 * Reads an SVG back, without a parser of the engine's packages. It knows what the project may write and takes everything
 * else for an error, so that nothing is overlooked. Lengths come out in user units with transformations applied.
 */
export interface ReadSvg {
  /** As written, with their units. */
  readonly width: string;
  readonly height: string;
  readonly viewBox: readonly number[];
  /** Every `title` element. */
  readonly titles: readonly string[];
  /** Every `desc` element. */
  readonly remarks: readonly string[];
  readonly groups: readonly { readonly id: string; readonly label: string }[];
  readonly lines: readonly ReadSvgLine[];
  readonly paths: readonly ReadSvgPath[];
  /** Boxes of the clips, by id, in the units of what they clip. */
  readonly clips: Readonly<Record<string, readonly [number, number, number, number]>>;
  /** Every attribute that is used anywhere. */
  readonly attributes: ReadonlySet<string>;
}

export interface ReadSvgPoint {
  readonly x: number;
  readonly y: number;
}

export interface ReadSvgPainted {
  /** Ids of the groups around it, outermost first. */
  readonly groups: readonly string[];
  readonly attributes: Readonly<Record<string, string>>;
}

export interface ReadSvgLine extends ReadSvgPainted {
  readonly from: ReadSvgPoint;
  readonly to: ReadSvgPoint;
}

export interface ReadSvgPath extends ReadSvgPainted {
  readonly segments: readonly ReadSvgSegment[];
  /** Subpaths that are closed, and those that are not. */
  readonly closed: number;
  readonly open: number;
}

export type ReadSvgSegment =
  | { readonly kind: 'line'; readonly from: ReadSvgPoint; readonly to: ReadSvgPoint }
  | {
      readonly kind: 'cubic';
      readonly from: ReadSvgPoint;
      readonly c1: ReadSvgPoint;
      readonly c2: ReadSvgPoint;
      readonly to: ReadSvgPoint;
    }
  | {
      readonly kind: 'arc';
      readonly from: ReadSvgPoint;
      readonly to: ReadSvgPoint;
      readonly radius: number;
      readonly clockwise: boolean;
      readonly centre: ReadSvgPoint;
    };

type Matrix = readonly [number, number, number, number, number, number];
const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

function times([a, b, c, d, e, f]: Matrix, [p, q, r, s, t, u]: Matrix): Matrix {
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

const apply = ([a, b, c, d, e, f]: Matrix, x: number, y: number): ReadSvgPoint => ({
  x: a * x + c * y + e,
  y: b * x + d * y + f,
});

const ENTITIES: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };
const unescaped = (text: string): string => text.replaceAll(/&(\w+);/g, (_, name: string) => ENTITIES[name]!);

export function readSvg(text: string): ReadSvg {
  const titles: string[] = [];
  const remarks: string[] = [];
  const groups: { id: string; label: string }[] = [];
  const lines: ReadSvgLine[] = [];
  const paths: ReadSvgPath[] = [];
  const clips: Record<string, readonly [number, number, number, number]> = {};
  const used = new Set<string>();
  const open: { name: string; id: string; matrix: Matrix; attributes: Record<string, string> }[] = [];
  let root: Record<string, string> = {};
  let words = '';
  for (const [, closing, name, rest, single, between] of text.matchAll(/<(\/?)([\w:]+)([^<>]*?)(\/?)>([^<]*)/g)) {
    if (closing === '/') {
      const ended = open.pop();
      if (ended?.name !== name) throw new Error(`</${name}> closes <${ended?.name}>`);
      if (name === 'title') titles.push(unescaped(words));
      if (name === 'desc') remarks.push(unescaped(words));
    } else {
      const attributes: Record<string, string> = {};
      for (const [, key, value] of rest!.matchAll(/([\w:-]+)="([^"]*)"/g)) {
        used.add(key!);
        if (key! in attributes) throw new Error(`${key} stands twice`);
        attributes[key!] = unescaped(value!);
      }
      const outer = open.at(-1);
      const matrix = times(outer?.matrix ?? IDENTITY, transform(attributes.transform));
      const around = open.map(({ id }) => id).filter((id) => id !== '');
      const number = (key: string): number => Number(attributes[key]);
      switch (name) {
        case 'svg':
          root = attributes;
          break;
        case 'title':
        case 'desc':
        case 'clipPath':
          break;
        case 'g':
          if (attributes.id !== undefined) groups.push({ id: attributes.id, label: attributes['data-label'] ?? '' });
          break;
        case 'rect':
          if (outer?.name !== 'clipPath') throw new Error('a rect that clips nothing');
          clips[outer.attributes.id!] = [number('x'), number('y'), number('width'), number('height')];
          break;
        case 'line':
          lines.push({
            groups: around,
            attributes,
            from: apply(matrix, number('x1'), number('y1')),
            to: apply(matrix, number('x2'), number('y2')),
          });
          break;
        case 'path':
          paths.push({ groups: around, attributes, ...pathData(attributes.d!, matrix) });
          break;
        default:
          throw new Error(`<${name}> is not known to this reader`);
      }
      if (single !== '/') open.push({ name: name!, id: attributes.id ?? '', matrix, attributes });
    }
    words = between!;
  }
  if (open.length > 0) throw new Error(`<${open.at(-1)!.name}> is not closed`);
  const viewBox = root.viewBox!.split(' ').map(Number);
  return {
    width: root.width!,
    height: root.height!,
    viewBox,
    titles,
    remarks,
    groups,
    lines,
    paths,
    clips,
    attributes: used,
  };
}

function transform(text: string | undefined): Matrix {
  if (text === undefined) return IDENTITY;
  const [, kind, list] = /^(matrix|scale)\(([^()]*)\)$/.exec(text) ?? [];
  const numbers = (list ?? '').split(' ').map(Number);
  const [a, b, c, d, e, f] = numbers as [number, number, number, number, number, number];
  if (kind === 'matrix' && numbers.length === 6) return [a, b, c, d, e, f];
  if (kind === 'scale' && numbers.length === 2) return [a, 0, 0, b, 0, 0];
  throw new Error(`${text} is not known to this reader`);
}

function pathData(data: string, matrix: Matrix): { segments: readonly ReadSvgSegment[]; closed: number; open: number } {
  const segments: ReadSvgSegment[] = [];
  let [subpaths, closed] = [0, 0];
  let [x, y] = [0, 0];
  let start = { x, y };
  const moved = (nx: number, ny: number): { from: ReadSvgPoint; to: ReadSvgPoint } => {
    const from = apply(matrix, x, y);
    [x, y] = [nx, ny];
    return { from, to: apply(matrix, x, y) };
  };
  for (const [, letter, list] of data.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const n = list!.trim() === '' ? [] : list!.trim().split(' ').map(Number);
    if (n.some(Number.isNaN)) throw new Error(`${letter}${list} holds what is no number`);
    switch (letter) {
      case 'M':
        subpaths++;
        [x, y] = [n[0]!, n[1]!];
        start = { x, y };
        break;
      case 'm':
        subpaths++;
        [x, y] = [x + n[0]!, y + n[1]!];
        start = { x, y };
        break;
      case 'L':
        segments.push({ kind: 'line', ...moved(n[0]!, n[1]!) });
        break;
      case 'l':
        segments.push({ kind: 'line', ...moved(x + n[0]!, y + n[1]!) });
        break;
      case 'q': {
        // The same curve by two handles, each two thirds of the way to its one.
        const [ox, oy] = [x, y];
        const handle = (part: readonly [number, number]): ReadSvgPoint =>
          apply(matrix, ox + part[0] + (2 / 3) * (n[0]! - part[0]), oy + part[1] + (2 / 3) * (n[1]! - part[1]));
        const [c1, c2] = [handle([0, 0]), handle([n[2]!, n[3]!])];
        segments.push({ kind: 'cubic', c1, c2, ...moved(x + n[2]!, y + n[3]!) });
        break;
      }
      case 'C': {
        const [c1, c2] = [apply(matrix, n[0]!, n[1]!), apply(matrix, n[2]!, n[3]!)];
        segments.push({ kind: 'cubic', c1, c2, ...moved(n[4]!, n[5]!) });
        break;
      }
      case 'A': {
        const [rx, ry, turn, large, sweep, tx, ty] = n as [number, number, number, number, number, number, number];
        if (rx !== ry || turn !== 0) throw new Error('an arc that is no part of a circle');
        const centre = centreOf({ x, y }, { x: tx, y: ty }, rx, large === 1, sweep === 1);
        const placed = apply(matrix, centre.x, centre.y);
        segments.push({ kind: 'arc', radius: rx, clockwise: sweep === 1, centre: placed, ...moved(tx, ty) });
        break;
      }
      case 'Z':
      case 'z':
        closed++;
        if (Math.hypot(x - start.x, y - start.y) > 1e-9) segments.push({ kind: 'line', ...moved(start.x, start.y) });
        [x, y] = [start.x, start.y];
        break;
      default:
        throw new Error(`path command ${letter} is not known to this reader`);
    }
  }
  return { segments, closed, open: subpaths - closed };
}

/** SVG 1.1, F.6.5, for circles. */
function centreOf(a: ReadSvgPoint, b: ReadSvgPoint, radius: number, large: boolean, sweep: boolean): ReadSvgPoint {
  const [dx, dy] = [(b.x - a.x) / 2, (b.y - a.y) / 2];
  const half = Math.hypot(dx, dy);
  const h = Math.sqrt(Math.max(0, radius ** 2 - half ** 2)) / half;
  const side = large === sweep ? 1 : -1;
  return { x: a.x + dx + side * h * dy, y: a.y + dy - side * h * dx };
}
