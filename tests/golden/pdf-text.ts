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

/** What a page shows, clipped to it, in the order of painting within each kind. */
function pageText(page: ReadPage): string[] {
  const lines = page.lines.flatMap((line) => {
    const shown = visible(line);
    return shown === undefined ? [] : [`line  ${place(shown.from)}  ${place(shown.to)}${pen(line)}${where(line)}`];
  });
  const curves = page.curves
    .filter((curve) => within(curve, curve.from) || within(curve, curve.to))
    .map((curve) => {
      const { from, c1, c2, to } = curve;
      return `curve  ${[from, c1, c2, to].map(place).join('  ')}${pen(curve)}${where(curve)}`;
    });
  const texts = page.texts
    .filter((text) => within(text, text.at))
    .map((text) => {
      const size = `${points(text.size)} pt, ${points(text.width)} wide, turned ${text.turn.toFixed(2)}`;
      return `text  ${place(text.at)}  ${JSON.stringify(text.text)}  ${size}  ${text.fill}${where(text)}`;
    });
  return [
    `page ${page.number}: ${page.widthPt.toFixed(4)} × ${page.heightPt.toFixed(4)} pt`,
    ...[...lines, ...curves, ...texts].map((line) => `  ${line}`),
  ];
}

/** A PDF as an independent reader understands it: one line of text for each line, curve and word that a page shows. */
export async function pdfText(bytes: Uint8Array): Promise<string> {
  const pdf = await readPdf(bytes);
  const preferences = Object.entries(pdf.viewerPreferences).map(([key, value]) => `${key} ${String(value)}`);
  return [
    `title: ${pdf.title}`,
    `subject: ${pdf.subject}`,
    `language: ${pdf.language}`,
    `viewer: ${preferences.sort().join(', ')}`,
    ...pdf.layers.map(({ name, shown }) => `layer: ${name}, ${shown ? 'shown' : 'hidden'}`),
    ...pdf.pages.flatMap(pageText),
    '',
  ].join('\n');
}
