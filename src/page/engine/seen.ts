import type { Drawing, Group, Item, TextItem } from '../../drawing/model.ts';
import { type Box, bottom, box, grown, right, union } from '../../geometry/box.ts';
import { pathBox } from '../../geometry/extent.ts';
import { hexColour } from '../../writers/colour.ts';
import { type PathWriting, pathData } from '../../writers/path-data.ts';
import { paintOf } from '../../writers/svg/paint.ts';

/** A drawing as a screen has it: what a path is drawn with stands once for all that are drawn so, and paths are words already. */
export interface Seen {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  /** Attributes of lines and paths, by their place here. */
  readonly styles: readonly Attributes[];
  readonly groups: readonly { readonly name: string; readonly items: readonly SeenItem[] }[];
}

export type Attributes = Readonly<Record<string, string | number>>;

export type SeenItem =
  | { readonly kind: 'path'; readonly d: string; readonly style: number }
  | { readonly kind: 'text'; readonly text: string; readonly attributes: Attributes }
  | { readonly kind: 'picture'; readonly picture: string; readonly box: Box };

/** Fine enough for any screen, and short. */
const FOR_SCREEN: PathWriting = { number: (mm) => String(Math.round(mm * 1000) / 1000) };

/** Every item by itself. */
export const seen = (drawing: Drawing): Seen => seenBy(drawing, ({ items }, write) => items.map(write));

/** Paths that are drawn alike are one, wherever that hides nothing else: a picture of many openings is a handful of elements. */
export const seenTogether = (drawing: Drawing): Seen =>
  seenBy(drawing, (group, write) => together(group.items, drawing.pens, write));

type Write = (item: Item) => SeenItem;

function seenBy(drawing: Drawing, itemsOf: (group: Group, write: Write) => readonly SeenItem[]): Seen {
  const { title, width, height, pens, groups } = drawing;
  const styles: Attributes[] = [];
  const known = new Map<string, number>();
  const write = (item: Item): SeenItem => {
    if (item.kind === 'picture') return { kind: 'picture', picture: item.picture, box: item.box };
    if (item.kind === 'text') return { kind: 'text', text: item.text, attributes: textAttributes(item) };
    const key = paintKey(item);
    const style = known.get(key) ?? styles.push(paintOf(item, pens, FOR_SCREEN.number)) - 1;
    known.set(key, style);
    return { kind: 'path', d: dataOf(item), style };
  };
  const seenGroups = groups
    .filter(({ shown }) => shown)
    .map((group) => ({ name: group.name, items: itemsOf(group, write) }));
  return { title, width, height, styles, groups: seenGroups };
}

type Drawn = Extract<Item, { readonly kind: 'line' | 'path' }>;

const paintKey = (item: Drawn): string =>
  item.kind === 'path' ? `${item.pen ?? ''}|${item.fill ?? ''}|${item.rule ?? ''}` : `${item.pen}||`;

function dataOf(item: Drawn): string {
  if (item.kind === 'path') return item.paths.map((path) => pathData(path, FOR_SCREEN)).join('');
  const { number } = FOR_SCREEN;
  const { from, to } = item;
  return `M${number(from.x)} ${number(from.y)}L${number(to.x)} ${number(to.y)}`;
}

/** Paths of one style, one over the other nowhere, and where each of them lies. */
interface Run {
  readonly key: string;
  readonly seen: SeenItem;
  readonly ds: string[];
  /** Left, top, right and bottom of each; undefined: it may hide anything. */
  readonly boxes: number[] | undefined;
}

const edges = (b: Box): readonly [number, number, number, number] => [b.x, b.y, right(b), bottom(b)];

function together(items: readonly Item[], pens: Drawing['pens'], write: Write): readonly SeenItem[] {
  const runs: Run[] = [];
  for (const item of items) {
    const made = write(item);
    if (item.kind === 'text' || item.kind === 'picture' || made.kind !== 'path') {
      runs.push({ key: '', seen: made, ds: [], boxes: undefined });
      continue;
    }
    const [key, own] = [paintKey(item), boxOf(item, pens)];
    const run = below(runs, key, own);
    if (run === undefined) runs.push({ key, seen: made, ds: [made.d], boxes: [...edges(own)] });
    else {
      run.ds.push(made.d);
      run.boxes!.push(...edges(own));
    }
  }
  return runs.map(({ seen: one, ds }) => (one.kind === 'path' && ds.length > 1 ? { ...one, d: ds.join('') } : one));
}

/** The run that a path can be painted with: nothing that was painted since, nor in it, lies where the path does. */
function below(runs: readonly Run[], key: string, own: Box): Run | undefined {
  for (const run of runs.toReversed()) {
    if (run.boxes === undefined || hides(run.boxes, own)) return undefined;
    if (run.key === key) return run;
  }
  return undefined;
}

/** Asked a hundred thousand times for a picture of many openings. */
function hides(boxes: readonly number[], own: Box): boolean {
  const [left, top, toRight, toBottom] = edges(own);
  for (let i = 0; i < boxes.length; i += 4) {
    if (boxes[i]! < toRight && left < boxes[i + 2]! && boxes[i + 1]! < toBottom && top < boxes[i + 3]!) return true;
  }
  return false;
}

function boxOf(item: Drawn, pens: Drawing['pens']): Box {
  const half = item.pen === undefined ? 0 : (pens[item.pen]?.width ?? 0) / 2;
  // A mitre reaches farther than half of the line.
  if (item.kind === 'path') return grown(union(item.paths.map(pathBox)), 2 * half);
  const [x, y] = [Math.min(item.from.x, item.to.x), Math.min(item.from.y, item.to.y)];
  return grown(box(x, y, Math.abs(item.to.x - item.from.x), Math.abs(item.to.y - item.from.y)), half);
}

const textAttributes = ({ at, anchor, size, weight, turn, colour }: TextItem): Attributes => ({
  x: at.x,
  y: at.y,
  'font-size': size,
  fill: hexColour(colour),
  ...(anchor === 'start' ? {} : { 'text-anchor': anchor }),
  ...(weight === 'bold' ? { class: 'bold' } : {}),
  ...(turn === 0 ? {} : { transform: `rotate(${turn} ${at.x} ${at.y})` }),
});
