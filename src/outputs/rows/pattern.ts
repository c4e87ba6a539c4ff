import { facePattern } from '../../documents/pattern/face.ts';
import { pattern } from '../../documents/pattern/pattern.ts';
import { onlyGroups } from '../../drawing/full-scale.ts';
import type { Drawing } from '../../drawing/model.ts';
import { onOwnBoard } from '../../mat/own-board.ts';
import { layOut } from '../../paper/layout.ts';
import { documentRecord } from '../../paper/manifest.ts';
import { onPaper } from '../../paper/on-paper.ts';
import { nearest } from '../../problems/nearest.ts';
import { error, fail, type Problem, succeed } from '../../problems/problem.ts';
import type { Draw } from '../output.ts';
import type { PatternRecord, Records } from '../records.ts';
import { laidDocument } from './laid-document.ts';

/** The pattern of every layer, `pattern-1` for the top mat; `pattern-face` for what is done on its face. */
export const draw: Draw<Records['pattern']> = async ({ work, settled }, { show, extent = 'whole' }) => {
  const { job, mat, strokes } = work.jobs[0]!;
  const { fonts } = settled;
  const how = { extent, fonts };
  const backs = mat.layers.map(({ name }, layer) => ({
    ...pattern(onOwnBoard(mat, job, layer), strokes, job, layer, how),
    file: `pattern-${layer + 1}`,
    layer: layer + 1,
    name,
  }));
  const face = facePattern(mat, job, how);
  const patterns =
    face === undefined ? backs : [...backs, { ...face, file: 'pattern-face', layer: 1, name: 'face of the top mat' }];
  const unknown = unknownGroups(
    show,
    patterns.map((each) => each.drawing),
  );
  if (unknown.length > 0) return fail(unknown);
  const layouts = patterns.map((each) =>
    layOut(show === undefined ? each : onlyGroups(each, show), {
      ...onPaper(settled, job, extent),
      fonts,
      title: job.title,
      flat: show !== undefined,
    }),
  );
  const refused = layouts.flatMap((layout) => (layout.ok ? [] : layout.problems));
  if (refused.length > 0) return fail(refused);
  const laid = layouts.flatMap((layout, i) => (layout.ok ? [{ ...patterns[i]!, layout: layout.value }] : []));
  const record = laid.map(({ file, layer, name, layout }): PatternRecord => {
    const { sheets, skipped, summary, advice } = layout;
    const said = { sheets, skipped, summary, advice, printer: settled.stamp };
    return { file: `${file}.pdf`, layer, name, ...said, ...documentRecord(`${file}.pdf`, layout) };
  });
  const drawn = {
    record,
    title: job.title,
    documents: laid.map(({ file, name, layout }) => laidDocument(file, `${name}: ${layout.summary}`, layout)),
    drawings: [],
    drawingFormats: [],
    usual: ['pdf'],
    beds: [],
    notes: [settled.stamp],
    family: '^pattern-(?:\\d+|face)(?:-[\\w-]+)?\\.(?:pdf|svg|png)$',
  };
  return succeed(drawn, [
    ...patterns.flatMap(({ warnings }) => warnings),
    ...layouts.flatMap((layout) => (layout.ok ? layout.warnings : [])),
  ]);
};

/** Groups that no drawing has are refused, with the nearest one that there is. */
function unknownGroups(names: readonly string[] | undefined, drawings: readonly Drawing[]): readonly Problem[] {
  const known = [...new Set(drawings.flatMap((d) => d.groups.map((group) => group.name)))];
  return (names ?? [])
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
