import type { Drawing } from './drawing/model.ts';
import { loadFonts } from './fonts/load.ts';
import { findJig, type JigRequest, jigDocument } from './paper/jig-document.ts';
import { fail, type Result, succeed } from './problems/problem.ts';
import { settle } from './settle/settle.ts';
import type { Asked } from './settle/settled.ts';
import { calibrationState } from './shop/calibrated.ts';
import { readShop } from './shop/read-shop.ts';
import { NO_SHOP } from './shop/shop.ts';
import { type DrawingFormat, FORMATS, findFormat } from './writers/formats.ts';
import { writePdf } from './writers/pdf.ts';

export interface JigWishes extends Omit<JigRequest, 'shop' | 'state' | 'fonts'>, Pick<Asked, 'paper' | 'printer'> {
  /** The shop's file. */
  readonly shop?: { readonly text: string; readonly file: string };
  /** Also what there is to cut, in these formats of one drawing: `svg`, `dxf`, `hpgl`. */
  readonly cut?: readonly string[];
}

export interface MadeJig {
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
  readonly title: string;
  readonly sheets: number;
  /** Which printer is corrected for, or that none is. */
  readonly printer: string;
  /** What the sheets were made from, each as large as its paper. */
  readonly drawings: readonly Drawing[];
}

const DRAWING_FORMATS = FORMATS.filter((format): format is DrawingFormat => format.of === 'drawing');

/** A jig as bytes: `jig-KIND.pdf`, and `jig-KIND.svg` and its like where something of it is cut and that is wished. */
export async function makeJig(kind: string, wishes: JigWishes): Promise<Result<MadeJig>> {
  const { shop: source, cut: formats = [], paper, printer, ...request } = wishes;
  const entry = findJig(kind);
  if (!entry.ok) return entry;
  const written = formats.map((id) => findFormat(id, DRAWING_FORMATS));
  const wrong = written.flatMap((each) => (each.ok ? [] : each.problems));
  if (wrong.length > 0) return fail(wrong);
  const shop = source === undefined ? succeed(NO_SHOP) : readShop(source);
  if (!shop.ok) return shop;
  const fonts = await loadFonts([], { files: true, outlines: written.length > 0 });
  const state = calibrationState(source?.text, source?.file);
  const settled = settle({
    shop: shop.value,
    uses: ['sheet'],
    newPrinter: entry.value.uncorrected === true,
    asked: { ...(paper === undefined ? {} : { paper }), ...(printer === undefined ? {} : { printer }) },
    ...(request.solved === undefined ? {} : { job: request.solved.job }),
  });
  const made = jigDocument(entry.value, settled, { ...request, shop: shop.value, state, fonts });
  if (!made.ok) return fail(made.problems);
  const { document, drawings, cut, stamp } = made.value;
  const files = [{ name: `jig-${kind}.pdf`, bytes: await writePdf(document, { fonts }) }];
  for (const format of written.flatMap((each) => (each.ok ? [each.value] : []))) {
    if (cut === undefined) continue;
    const write = await format.load();
    files.push({ name: `jig-${kind}.${format.extension}`, bytes: write(cut, { fonts }) });
  }
  return succeed(
    { files, title: document.title, sheets: document.pages.length, printer: stamp, drawings },
    made.warnings,
  );
}
