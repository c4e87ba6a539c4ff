import { createHash } from 'node:crypto';
import {
  type Painted,
  type ReadPage,
  type ReadPoint,
  type ReadStroke,
  readPdf,
  visible,
} from '../readers/pdf-lines.ts';

const POINTS_PER_MM = 72 / 25.4;

/** Points to four places, without a minus before zero. */
const points = (mm: number): string => (Math.round(mm * POINTS_PER_MM * 1e4) / 1e4 + 0).toFixed(4);
const place = ({ x, y }: ReadPoint): string => `${points(x)} ${points(y)}`;

const where = ({ form, layer }: Painted): string => (form ? ` in ${layer ?? 'the drawing'}` : '');

function pen({ widthPt, dash, cap, stroke, fill }: ReadStroke): string {
  const drawn = stroke === undefined ? '' : `  ${stroke} ${widthPt.toFixed(3)} ${cap} [${dash.map(points).join(' ')}]`;
  return `${drawn}${fill === undefined ? '' : `  filled ${fill}`}`;
}

const within = ({ clip }: Painted, { x, y }: ReadPoint): boolean =>
  x >= clip.x && x <= clip.x + clip.width && y >= clip.y && y <= clip.y + clip.height;

/** A line or a curve as text, and what it is summed up by. */
interface Told {
  readonly text: string;
  readonly where: string;
  readonly points: readonly ReadPoint[];
}

/** Lines and curves, clipped to the page, in the order of painting within each kind. */
function strokesOf(page: ReadPage): readonly Told[] {
  const lines = page.lines.flatMap((line) => {
    const shown = visible(line);
    if (shown === undefined) return [];
    const ends = [shown.from, shown.to];
    return [{ text: `line  ${ends.map(place).join('  ')}${pen(line)}`, where: where(line), points: ends }];
  });
  const curves = page.curves
    .filter((curve) => within(curve, curve.from) || within(curve, curve.to))
    .map((curve) => {
      const points = [curve.from, curve.c1, curve.c2, curve.to];
      return { text: `curve  ${points.map(place).join('  ')}${pen(curve)}`, where: where(curve), points };
    });
  return [...lines, ...curves];
}

/** How many there are in each layer, the box round them, and the hash of all: none can change, come or go unseen. */
function summed(strokes: readonly Told[]): readonly string[] {
  return [...new Set(strokes.map((told) => told.where))].map((layer) => {
    const own = strokes.filter((told) => told.where === layer);
    const xs = own.flatMap((told) => told.points.map(({ x }) => x));
    const ys = own.flatMap((told) => told.points.map(({ y }) => y));
    const corners = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].map(points).join(' ');
    const hash = createHash('sha256')
      .update(own.map((told) => told.text).join('\n'))
      .digest('hex')
      .slice(0, 16);
    return `${own.length} lines and curves  ${corners}  ${hash}${layer}`;
  });
}

const HOW = {
  each: (strokes: readonly Told[]): readonly string[] => strokes.map((told) => `${told.text}${told.where}`),
  summed,
};

/** Whether each line is told, or the sum of those in a layer of a page. */
export type Strokes = keyof typeof HOW;

/** What a page shows: its lines, its curves, its words. */
function pageText(page: ReadPage, strokes: Strokes): string[] {
  const texts = page.texts
    .filter((text) => within(text, text.at))
    .map((text) => {
      const size = `${points(text.size)} pt, ${points(text.width)} wide, turned ${text.turn.toFixed(2)}`;
      return `text  ${place(text.at)}  ${JSON.stringify(text.text)}  ${size}  ${text.fill}${where(text)}`;
    });
  return [
    `page ${page.number}: ${page.widthPt.toFixed(4)} × ${page.heightPt.toFixed(4)} pt`,
    ...[...HOW[strokes](strokesOf(page)), ...texts].map((line) => `  ${line}`),
  ];
}

/** A PDF as an independent reader understands it: the words of each page, and its lines and curves. */
export async function pdfText(bytes: Uint8Array, strokes: Strokes): Promise<string> {
  const pdf = await readPdf(bytes);
  const preferences = Object.entries(pdf.viewerPreferences).map(([key, value]) => `${key} ${String(value)}`);
  return [
    `title: ${pdf.title}`,
    `subject: ${pdf.subject}`,
    `language: ${pdf.language}`,
    `viewer: ${preferences.sort().join(', ')}`,
    ...pdf.layers.map(({ name, shown }) => `layer: ${name}, ${shown ? 'shown' : 'hidden'}`),
    ...pdf.pages.flatMap((page) => pageText(page, strokes)),
    '',
  ].join('\n');
}
