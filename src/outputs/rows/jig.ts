import { defined } from '../../problems/defined.ts';
import { fail, succeed } from '../../problems/problem.ts';
import { calibrationState } from '../../shop/calibrated.ts';
import { type DrawingFormat, FORMATS, findFormat } from '../../writers/formats.ts';
import type { Draw } from '../output.ts';
import type { Records } from '../records.ts';
import { countWords } from '../taken.ts';
import { findJig, jigDocument } from './jig-document.ts';

const DRAWING_FORMATS = FORMATS.filter((format): format is DrawingFormat => format.of === 'drawing');

/** A jig, `jig-KIND`, and what of it is cut in the formats that are wished. Errors: those of `jigDocument`, `format-unknown`. */
export const draw: Draw<Records['jig']> = async ({ work, shop, settled }, { kind = '', head, thickness, cut = [] }) => {
  const entry = findJig(kind);
  const written = cut.map((id) => findFormat(id, DRAWING_FORMATS));
  const wrong = [entry, ...written].flatMap((each) => (each.ok ? [] : each.problems));
  if (!entry.ok || wrong.length > 0) return fail(wrong);
  const [solved] = work.jobs;
  const made = jigDocument(entry.value, succeed(settled), {
    shop,
    fonts: settled.fonts,
    state: calibrationState(work.shop?.text, work.shop?.file),
    ...defined({ solved }),
    ...defined({ head }),
    ...defined({ thickness }),
  });
  if (!made.ok) return made;
  const { document, cut: drawing, stamp } = made.value;
  const { title } = document;
  const name = `jig-${kind}`;
  const sheets = document.pages.length;
  const drawn = {
    record: { kind, title, sheets, printer: stamp },
    title,
    documents: [
      { name, document, pages: 'numbered', said: `${title}, ${countWords(sheets, 'sheet')}`, more: [] } as const,
    ],
    drawings: drawing === undefined ? [] : [{ name, drawing, how: {}, said: title, more: [] }],
    drawingFormats: cut.map((id) => id.toLowerCase()),
    usual: ['pdf'],
    beds: [],
    notes: [stamp],
  };
  return succeed(drawn, made.warnings);
};
