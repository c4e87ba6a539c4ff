import type { PathItem } from '../../drawing/model.ts';
import { union } from '../../geometry/box.ts';
import { pathBox } from '../../geometry/extent.ts';
import { type Path, placedSegment } from '../../geometry/path.ts';
import type { Size } from '../../geometry/point.ts';
import { Unreadable } from '../model.ts';
import { SHAPES } from './elements.ts';
import { broken, type Element, readMarkup } from './markup.ts';
import { type Classes, classesOf, PAINT, type Paint, paintOf } from './style.ts';
import { IDENTITY, type Matrix, placedBy, transformed, withoutArcs } from './transform.ts';

/** Plain areas, their top left at 0 0, in a unit of their own. */
export interface ReadSvg extends Size {
  readonly items: readonly PathItem[];
}

/** A mark is a few shapes; longer texts hold pictures, or what a program keeps for itself. */
const MOST_CHARACTERS = 512 * 1024;
/** Every label has the mark in full. */
const MOST_SEGMENTS = 4000;

/** Elements that put nothing on the paper. */
const SILENT = new Set(['title', 'desc', 'metadata', 'style', 'defs', 'script']);
const WRITTEN: Readonly<Record<string, string>> = {
  text: 'make paths of its letters',
  image: 'name the picture itself as the mark',
  use: 'put in place what it stands for',
  line: 'make an area of its line',
};

/**
 * Areas filled with one colour each: paths, rectangles, circles, ellipses and polygons, in groups and turned as they may be.
 * What else puts something on the paper is refused with its line: lettering without its font, lines, pictures, see-through
 * or shaded areas would not look like the mark. Throws `mark-svg`.
 */
export function readSvg(text: string): ReadSvg {
  if (text.length > MOST_CHARACTERS)
    throw new Unreadable('mark-svg', `the file is longer than ${MOST_CHARACTERS / 1024} KiB`, 'save it as plain SVG');
  const root = readMarkup(text);
  if (local(root) !== 'svg') throw broken(root.line, `<${root.name}> is no SVG`, 'name an SVG, a JPEG or a PNG');
  const items: PathItem[] = [];
  const look = (element: Element, outer: Paint, matrix: Matrix, classes: Classes): void => {
    const name = local(element);
    if (name === undefined || SILENT.has(name)) return;
    const paint = paintOf(element, outer, classes);
    if (paint.hidden) return;
    const own = transformed(matrix, element.attributes.get('transform'), element.line);
    if (name === 'g' || name === 'a' || element === root) {
      for (const child of element.children) look(child, paint, own, classes);
      return;
    }
    const shape = Object.hasOwn(SHAPES, name) ? SHAPES[name] : undefined;
    if (shape === undefined)
      throw broken(element.line, `<${name}> is not read`, WRITTEN[name] ?? 'make plain filled paths of it');
    if (paint.stroked)
      throw broken(element.line, `<${name}> has a line of its own`, 'make an area of its line, or take it off');
    if (paint.fill === undefined) return;
    const paths = shape(element).map(({ start, segments }): Path => {
      const place = placedBy(own);
      return {
        start: place(start),
        segments: withoutArcs(start, segments).map((segment) => placedSegment(segment, place)),
        closed: true,
      };
    });
    if (paths.length === 0) return;
    items.push({ kind: 'path', paths, fill: paint.fill, ...(paint.rule === 'nonzero' ? { rule: paint.rule } : {}) });
    const count = items.reduce(
      (sum, { paths: all }) => sum + all.reduce((of, { segments }) => of + segments.length, 0),
      0,
    );
    if (count > MOST_SEGMENTS)
      throw broken(element.line, `the mark has more than ${MOST_SEGMENTS} lines and curves`, 'simplify its paths');
  };
  look(root, PAINT, IDENTITY, classesIn(root));
  if (items.length === 0) throw broken(root.line, 'there is nothing to be seen in it', 'is this the right file?');
  const { x, y, width, height } = union(items.flatMap(({ paths }) => paths.map(pathBox)));
  if (!(width > 0) || !(height > 0) || !Number.isFinite(width + height))
    throw broken(root.line, 'what is in it has no size', 'is this the right file?');
  const toOrigin = placedBy([1, 0, 0, 1, -x, -y]);
  return { width, height, items: items.map((item) => placedItem(item, toOrigin)) };
}

/** Its name where it is an element of SVG; those of drawing programs stand in namespaces of their own. */
const local = ({ name }: Element): string | undefined =>
  name.startsWith('svg:') ? name.slice(4) : name.includes(':') ? undefined : name;

function classesIn(element: Element): Classes {
  const own = local(element) === 'style' ? [...classesOf(element)] : [];
  return new Map([...own, ...element.children.flatMap((child) => [...classesIn(child)])]);
}

const placedItem = (item: PathItem, place: ReturnType<typeof placedBy>): PathItem => ({
  ...item,
  paths: item.paths.map(({ start, segments, closed }) => ({
    start: place(start),
    segments: segments.map((segment) => placedSegment(segment, place)),
    closed,
  })),
});
