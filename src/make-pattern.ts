import { facePattern } from './documents/pattern/face.ts';
import { pattern } from './documents/pattern/pattern.ts';
import type { FullScale } from './drawing/full-scale.ts';
import type { Drawing } from './drawing/model.ts';
import type { Fonts } from './fonts/model.ts';
import { onOwnBoard } from './mat/own-board.ts';
import { type Layout, layOut } from './paper/layout.ts';
import { type DocumentRecord, documentRecord } from './paper/manifest.ts';
import { onPaper } from './paper/on-paper.ts';
import type { LayoutOptions } from './paper/options.ts';
import { nearest } from './problems/nearest.ts';
import { error, fail, type Problem, type Result, succeed } from './problems/problem.ts';
import type { Settled } from './settle/settled.ts';
import type { Solved } from './solve-job.ts';
import { loadSvg } from './writers/load-svg.ts';
import { writePdf } from './writers/pdf.ts';
import type { SvgOptions } from './writers/svg.ts';

export interface PatternWishes {
  readonly extent?: LayoutOptions['extent'];
  /** Also one SVG for each pattern. */
  readonly svg?: boolean;
  /** Also one SVG for each sheet that shows a part of the pattern; each has rulers of its own. */
  readonly tiles?: boolean;
  /** Only these groups of the drawings, flattened. */
  readonly show?: readonly string[];
}

export interface PatternRecord extends DocumentRecord {
  readonly file: string;
  readonly layer: number;
  readonly name: string;
  readonly sheets: number;
  readonly skipped: number;
  readonly summary: string;
  readonly advice: readonly string[];
  /** Which printer is corrected for, or that none is. */
  readonly printer: string;
}

export interface MadePatterns {
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
  readonly records: readonly PatternRecord[];
}

/** The pattern of every layer, `pattern-1.pdf` for the top mat; `pattern-face.pdf` for what is done on its face. */
export async function makePatterns(
  { job, mat, strokes }: Solved,
  settled: Settled,
  wishes: PatternWishes,
  fonts: Fonts,
): Promise<Result<MadePatterns>> {
  const how = { extent: wishes.extent ?? 'whole', fonts } as const;
  const backs = mat.layers.map((_, layer) => ({
    ...pattern(onOwnBoard(mat, job, layer), strokes, job, layer, how),
    file: `pattern-${layer + 1}`,
    layer: layer + 1,
    name: mat.layers[layer]!.name,
  }));
  const face = facePattern(mat, job, how);
  const patterns =
    face === undefined ? backs : [...backs, { ...face, file: 'pattern-face', layer: 1, name: 'face of the top mat' }];
  const unknown = unknownGroups(
    wishes.show,
    patterns.map((p) => p.drawing),
  );
  if (unknown.length > 0) return fail(unknown);
  const layouts = patterns.map((each) =>
    layOut(shown(each, wishes.show), {
      ...onPaper(settled, job.print, how.extent),
      fonts,
      title: job.title,
      flat: wishes.show !== undefined,
    }),
  );
  const refused = layouts.flatMap((layout) => (layout.ok ? [] : layout.problems));
  if (refused.length > 0) return fail(refused);

  const files: { name: string; bytes: Uint8Array }[] = [];
  const records: PatternRecord[] = [];
  const warnings = patterns.flatMap((p) => p.warnings);
  for (const [i, layout] of layouts.entries()) {
    if (!layout.ok) continue;
    const { file: name, layer, name: called } = patterns[i]!;
    const { sheets, skipped, summary, advice } = layout.value;
    warnings.push(...layout.warnings);
    records.push({
      file: `${name}.pdf`,
      layer,
      name: called,
      sheets,
      skipped,
      summary,
      advice,
      printer: settled.stamp,
      ...documentRecord(`${name}.pdf`, layout.value),
    });
    files.push({ name: `${name}.pdf`, bytes: await writePdf(layout.value, { fonts }) });
    if (wishes.svg === true || wishes.tiles === true)
      files.push(...(await svgFiles(name, layout.value, wishes, { fonts })));
  }
  return succeed({ files, records }, warnings);
}

/** Only the groups that were asked for, so that sheets on which nothing else is drawn are left out. */
function shown(work: FullScale, asked: readonly string[] | undefined): FullScale {
  if (asked === undefined) return work;
  const groups = work.drawing.groups.filter((group) => asked.includes(group.name));
  return { ...work, drawing: { ...work.drawing, groups: groups.map((group) => ({ ...group, shown: true })) } };
}

/** The pattern as one SVG, or each of its sheets as one, or both. */
async function svgFiles(
  name: string,
  layout: Layout,
  wishes: PatternWishes,
  how: SvgOptions,
): Promise<MadePatterns['files']> {
  const { writePageSvg, writeSvg } = await loadSvg();
  const file = (stem: string, text: string) => ({ name: `${stem}.svg`, bytes: new TextEncoder().encode(text) });
  return [
    ...(wishes.svg === true ? [file(name, writeSvg(layout.drawing, how))] : []),
    ...(wishes.tiles === true
      ? layout.pages
          .filter((page) => page.part !== undefined)
          .map((page) => file(`${name}-${page.name}`, writePageSvg(layout, page, how)))
      : []),
  ];
}

/** Groups that no drawing has are refused, with the nearest one that there is. */
function unknownGroups(asked: readonly string[] | undefined, drawings: readonly Drawing[]): readonly Problem[] {
  const known = [...new Set(drawings.flatMap((d) => d.groups.map((group) => group.name)))];
  return (asked ?? [])
    .filter((name) => !known.includes(name))
    .map((name) => {
      const near = nearest(name, known);
      return error(
        'group-unknown',
        [],
        `there is nothing named ${JSON.stringify(name)} to show`,
        `${near === undefined ? '' : `did you mean ${near}? `}known are ${known.join(', ')}`,
      );
    });
}
