import type { BenchJob } from '../../bench/bench-job.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Entry } from '../../text/entries.ts';
import { settingWords } from '../pattern/reading-words.ts';
import { grooveWords, lotWords, toolWords } from '../words/lot-words.ts';
import { pencilEntries } from '../words/pencil-table.ts';
import { layerEntries } from './layer.ts';
import type { LotPart } from './parts.ts';
import { settingRows } from './rows.ts';
import { cutNotes, layerLine } from './steps.ts';

const actions = (texts: readonly string[]): readonly Entry[] => texts.map((text) => ({ kind: 'action', text }));

/** One lot of a job, from its marks to its fallout, in the order of its steps. */
export function lotEntries(work: BenchJob, part: LotPart, column: number, fonts: Fonts): readonly Entry[] {
  const { mat, job } = work;
  const { lot, strokes } = part;
  const before = part.before.flatMap((step): readonly Entry[] => {
    if (step.kind === 'head' || (step.kind === 'depth' && step.passes > 1)) return [];
    if (step.kind === 'depth') return actions([toolWords(step, lot, mat.layers[lot.layer - 1]!.bevelFace, job.units)]);
    const said = actions(lotWords(step, lot, work));
    if (step.kind !== 'marks' || step.pencil === undefined) return said;
    return [...said, ...pencilEntries(step.pencil, { mat, strokes, units: job.units })];
  });
  const joined = part.after.filter(({ kind }) => kind === 'join');
  const after = part.after.filter(({ kind }) => kind !== 'join');
  const grooved = lot.work === 'groove';
  const fixed = part.before.some(({ kind }) => kind === 'fix');
  return [
    {
      kind: 'section',
      colour: mat.layers[lot.layer - 1]!.board.colour,
      text: grooved ? 'Cut the grooves' : `${fixed ? 'Fix and cut' : 'Cut'} ${lot.name}`,
      aside: grooved ? 'FACE up' : layerLine(mat, lot.layer - 1, job.units),
    },
    ...actions(grooved ? grooveWords(lot, work, part.cuts.length > 0) : []),
    ...before,
    ...actions(cutNotes(lot, work, strokes)),
    ...(grooved
      ? actions(grooveCuts(part))
      : layerEntries(work, lot.layer, settingRows(part, job.units), column, fonts)),
    ...actions(after.flatMap((step) => lotWords(step, lot, work))),
    ...(joined.length === 0
      ? []
      : [
          { kind: 'section', text: 'Put the mats together' } as const,
          ...actions(joined.flatMap((step) => lotWords(step, lot, work))),
        ]),
  ];
}

/** Readings of each pass, sides named from the face, which is up. */
function grooveCuts({ cuts }: LotPart): readonly string[] {
  return [false, true].flatMap((far): readonly string[] => {
    const own = cuts.filter(({ step }) => step.far === far);
    const say = (guided: boolean): readonly string[] =>
      own
        .filter(({ stroke }) => stroke.beyondGuide !== guided)
        .map(({ stroke }) => {
          const { setting, rest } = stroke;
          const sense = (rest?.setting ?? setting).sense;
          return `${stroke.order} ${stroke.side} ${settingWords(stroke)}${sense === 'exact' ? '' : ` ${sense}`}`;
        });
    const [guided, laid] = [say(true), say(false)];
    const parts = [
      ...(guided.length === 0 ? [] : [`the ${far ? 'far' : 'near'} edge on the guide: ${guided.join('; ')}`]),
      ...(laid.length === 0 ? [] : [`laid by the drawn line: ${laid.join('; ')}`]),
    ];
    if (parts.length === 0) return [];
    return [`Groove, pass ${far ? 2 : 1}, FACE up, sides as seen from it, ${parts.join('; ')}.`];
  });
}
