import type { Segment } from '../../geometry/path.ts';
import type { Point } from '../../geometry/point.ts';
import { type ReadPath, readPathParts } from '../../shapes/path-data.ts';
import { broken, type Element } from './markup.ts';

/** What is painted, by the name of its element. */
export const SHAPES: Readonly<Record<string, (element: Element) => readonly ReadPath[]>> = {
  path: (element) => partsIn(element, element.attributes.get('d') ?? ''),
  polygon: (element) => partsIn(element, corners(element)),
  polyline: (element) => partsIn(element, corners(element)),
  rect: (element) => {
    const [x, y, width, height] = [at(element, 'x'), at(element, 'y'), at(element, 'width'), at(element, 'height')];
    if (!(width > 0) || !(height > 0)) return [];
    const given = (name: string, other: string): number => at(element, element.attributes.has(name) ? name : other);
    const [rx, ry] = [Math.min(given('rx', 'ry'), width / 2), Math.min(given('ry', 'rx'), height / 2)];
    if (!(rx > 0) || !(ry > 0)) return partsIn(element, `M${x} ${y}h${width}v${height}h${-width}Z`);
    const arc = (dx: number, dy: number): string => `a${rx} ${ry} 0 0 1 ${dx} ${dy}`;
    const [w, h] = [width - 2 * rx, height - 2 * ry];
    return partsIn(
      element,
      `M${x + rx} ${y}h${w}${arc(rx, ry)}v${h}${arc(-rx, ry)}h${-w}${arc(-rx, -ry)}v${-h}${arc(rx, -ry)}Z`,
    );
  },
  circle: (element) => ring(element, at(element, 'r'), at(element, 'r')),
  ellipse: (element) => ring(element, at(element, 'rx'), at(element, 'ry')),
};

function ring(element: Element, rx: number, ry: number): readonly ReadPath[] {
  if (!(rx > 0) || !(ry > 0)) return [];
  const arc = (dx: number): string => `a${rx} ${ry} 0 0 1 ${dx} 0`;
  return partsIn(element, `M${at(element, 'cx') - rx} ${at(element, 'cy')}${arc(2 * rx)}${arc(-2 * rx)}Z`);
}

/** A length in the unit of the drawing; `px` is that unit. */
function at({ attributes, line }: Element, name: string): number {
  const text = attributes.get(name) ?? '0';
  const value = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)(?:px)?\s*$/i.exec(text)?.[1];
  if (value === undefined)
    throw broken(
      line,
      `${name}="${text.slice(0, 20)}" has a unit of its own`,
      'write it without one, or make a path of it',
    );
  return Number(value);
}

function corners({ attributes }: Element): string {
  const points = attributes.get('points')?.trim() ?? '';
  return points === '' ? '' : `M${points}Z`;
}

function partsIn({ line, name }: Element, data: string): readonly ReadPath[] {
  const parts = readPathParts(data);
  if ('message' in parts)
    throw broken(line, `<${name}>: ${parts.message}`, 'simplify the path, or save the file again');
  return parts.filter(({ segments }) => segments.length > 0).map(closed);
}

/** An area is closed, whatever its line is. */
function closed({ start, segments }: ReadPath): ReadPath {
  const last: Point = segments.at(-1)!.to;
  if (last.x === start.x && last.y === start.y) return { start, segments };
  const end: Segment = { kind: 'line', to: start };
  return { start, segments: [...segments, end] };
}
