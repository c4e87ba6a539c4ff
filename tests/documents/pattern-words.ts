import type { PageRecord } from '../../src/paper/manifest.ts';
import { type ReadBox, type ReadLine, type ReadPage, type ReadText, visible } from '../readers/pdf-lines.ts';

/** Round dots of nothing, 2.8 mm apart; short dashes: what a sheet draws for joining. */
const isJoin = ({ dash, cap, stroke }: ReadLine): boolean =>
  stroke !== undefined && cap === 'round' && Math.abs((dash[1] ?? 0) - 2.8) < 0.05;
const isCross = ({ dash, stroke }: ReadLine): boolean =>
  stroke !== undefined && Math.abs((dash[0] ?? 0) - 0.8) < 0.02 && Math.abs((dash[1] ?? 0) - 0.4) < 0.02;

/** Letters without what only some of them have below the line, em. */
const CAPITALS = 0.66;
/** Boxes may share the last hundredths of a millimetre. */
const SLACK = 0.02;

export function inkBox({ at, size, width, turn }: ReadText): ReadBox {
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const corners = [
    [0, 0],
    [width, 0],
    [0, CAPITALS * size],
    [width, CAPITALS * size],
  ].map(([along, up]) => ({ x: at.x + along! * cos + up! * sin, y: at.y + along! * sin - up! * cos }));
  const [xs, ys] = [corners.map((p) => p.x), corners.map((p) => p.y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

export const overlap = (a: ReadBox, b: ReadBox): boolean =>
  a.x < b.x + b.width - SLACK &&
  b.x < a.x + a.width - SLACK &&
  a.y < b.y + b.height - SLACK &&
  b.y < a.y + a.height - SLACK;

const within = (outer: ReadBox, inner: ReadBox): boolean =>
  inner.x >= outer.x - SLACK &&
  inner.y >= outer.y - SLACK &&
  inner.x + inner.width <= outer.x + outer.width + SLACK &&
  inner.y + inner.height <= outer.y + outer.height + SLACK;

/** Whether a line runs through a box: clipped to it, something of it is left. */
function runsThrough({ from, to }: Pick<ReadLine, 'from' | 'to'>, b: ReadBox): boolean {
  let [first, last] = [0, 1];
  for (const [start, end, low, high] of [
    [from.x, to.x, b.x + SLACK, b.x + b.width - SLACK],
    [from.y, to.y, b.y + SLACK, b.y + b.height - SLACK],
  ] as const) {
    const way = end - start;
    if (Math.abs(way) < 1e-12) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const [a, z] = [(low - start) / way, (high - start) / way];
    first = Math.max(first, Math.min(a, z));
    last = Math.min(last, Math.max(a, z));
  }
  return last > first;
}

export const shownWords = ({ texts }: ReadPage): readonly ReadText[] =>
  texts.filter(({ shown, text }) => shown && text.trim() !== '');

/** The part of the paper that the sheet shows. */
function window({ pageX, pageY, width, height, rotation, scale }: Required<PageRecord>): ReadBox {
  const [w, h] = rotation % 180 === 0 ? [width, height] : [height, width];
  return { x: pageX / scale.x, y: pageY / scale.y, width: w / scale.x, height: h / scale.y };
}

/** Everything about the words of one sheet that must not be. */
export function faults(page: ReadPage, record: PageRecord): readonly string[] {
  const found: string[] = [];
  const words = shownWords(page).map((word) => ({ word, box: inkBox(word) }));
  const paper = { x: 0, y: 0, width: page.width, height: page.height };
  const joins = page.lines.filter(isJoin);
  const crosses = page.lines.filter(isCross);
  // Only what is seen: a form holds the lines of all sheets.
  const others = page.lines.flatMap((line) => (line.form && line.stroke !== undefined ? (visible(line) ?? []) : []));
  const middle = window(record as Required<PageRecord>);
  for (const [i, { word, box }] of words.entries()) {
    const said = `${record.name}: "${word.text}"`;
    if (!within(paper, box) || !within(word.clip, box)) found.push(`${said} is cut off`);
    for (const join of joins) {
      const upright = Math.abs(join.from.x - join.to.x) < 0.01;
      const [at, low, high] = upright
        ? [join.from.x, box.x, box.x + box.width]
        : [join.from.y, box.y, box.y + box.height];
      if (low < at + 0.275 && high > at - 0.275) found.push(`${said} lies over a join line`);
      // What belongs to the drawing lies on the side that stays in sight.
      const centre = upright ? middle.x + middle.width / 2 : middle.y + middle.height / 2;
      if (word.layer !== undefined && (low + high) / 2 < at !== centre < at)
        found.push(`${said} lies under a neighbour`);
    }
    for (const cross of crosses) if (runsThrough(cross, box)) found.push(`${said} lies over a cross`);
    for (const { word: other, box: second } of words.slice(i + 1))
      if (overlap(box, second)) found.push(`${said} lies over "${other.text}"`);
    if (word.layer === undefined) continue;
    if (others.some((line) => runsThrough(line, box))) found.push(`${said} is crossed by a line`);
  }
  return found;
}

const boxOf = (sides: readonly ReadLine[]): ReadBox => {
  const [xs, ys] = [sides.map(({ from }) => from.x), sides.map(({ from }) => from.y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
};

/** Filled shapes of some layers, by how many sides they have. */
function filled(page: ReadPage, layers: readonly string[]): readonly (readonly ReadLine[])[] {
  const paths = new Map<number, ReadLine[]>();
  for (const line of page.lines) {
    if (line.fill === undefined || line.layer === undefined || !layers.includes(line.layer)) continue;
    paths.set(line.path, [...(paths.get(line.path) ?? []), line]);
  }
  return [...paths.values()];
}

const STROKES = 'Stroke arrows and numbers';
const MARKS = 'Start and stop marks';

/** An arrow has seven sides, a line under a number four. */
export const arrows = (page: ReadPage): readonly ReadBox[] =>
  filled(page, [STROKES])
    .filter((sides) => sides.length > 4)
    .map(boxOf);

export const underlines = (page: ReadPage): number =>
  filled(page, [STROKES, MARKS]).filter((sides) => sides.length === 4).length;

const isNumber = ({ text, layer }: ReadText): boolean => /^\d+$/.test(text) && (layer === STROKES || layer === MARKS);

/** Numbers that are others upside down: 6 and 9, 18 and 81 … */
export function mistakable(page: ReadPage): number {
  const flipped: Readonly<Record<string, string>> = { 0: '0', 1: '1', 6: '9', 8: '8', 9: '6' };
  return shownWords(page)
    .filter(isNumber)
    .filter(({ text }) => {
      const other = [...text]
        .map((digit) => flipped[digit] ?? '?')
        .reverse()
        .join('');
      return /^[1-9]\d*$/.test(other) && other !== text;
    }).length;
}

/** Numbers with a level arrow just above or below, which would seem to underline them. */
export function numbersOver(page: ReadPage): readonly string[] {
  const level = arrows(page).filter(({ width, height }) => width > height);
  return shownWords(page)
    .filter((word) => isNumber(word) && word.layer === STROKES)
    .flatMap((word) => {
      const box = inkBox(word);
      const over = level.some((arrow) => {
        const shared = Math.min(box.x + box.width, arrow.x + arrow.width) - Math.max(box.x, arrow.x);
        const apart = Math.max(arrow.y - box.y - box.height, box.y - arrow.y - arrow.height);
        return shared > 0.3 * box.width && apart >= 0 && apart < 4;
      });
      return over ? [`"${word.text}" seems to be underlined by an arrow`] : [];
    });
}
