import { settingOf } from '../../bench/guide.ts';
import type { Setting, Stroke } from '../../bench/model.ts';
import { finest } from '../../bench/rest.ts';
import type { Measured, PencilMarks, PencilOval } from '../../bench/work/pencil.ts';
import type { Mat } from '../../mat/model.ts';
import { sentenceCase } from '../../problems/sentence-case.ts';
import type { Entry } from '../../text/entries.ts';
import type { Units } from '../../units/units.ts';

/** The marks of a layer as a table, each with the edge that it is measured from, and what is drawn by pins. */
export function pencilEntries(
  { rows, ovals }: PencilMarks,
  { mat, strokes, units }: { readonly mat: Mat; readonly strokes: readonly Stroke[]; readonly units: Units },
): readonly Entry[] {
  const several = mat.openings.length > 1;
  const byHand = rows.length > 0 && strokes.every(({ rest }) => rest?.to === 'straightedge');
  const name = (opening: number): string => mat.openings[opening - 1]!.name;
  const table: Entry = {
    kind: 'table',
    head: [
      'no.',
      ...(several ? ['opening'] : []),
      `line, ${units}`,
      `S, ${units}`,
      `E, ${units}`,
      byHand ? 'straightedge' : 'guide',
    ],
    widths: several ? [7, 15, 19, 20, 20, byHand ? 18 : 13] : [7, 21, 21, 21, byHand ? 19 : 16],
    rows: rows.map(({ stroke, opening, line, start, stop }) => [
      `${stroke}`,
      ...(several ? [name(opening)] : []),
      measured(line),
      measured(start),
      measured(stop),
      guideWords(strokes.find(({ order }) => order === stroke)!),
    ]),
    rowHeight: 0,
  };
  return [
    ...(rows.length === 0 ? [] : [table]),
    ...ovals.map((oval): Entry => ({ kind: 'text', text: ovalWords(oval, name(oval.opening), units) })),
  ];
}

const said = ({ amount, sense }: Setting): string => (sense === 'exact' ? amount : `${amount} ${sense}`);
const measured = ({ edge, setting }: Measured): string => `${edge} ${said(setting)}`;

function guideWords({ setting, rest }: Stroke): string {
  if (rest === undefined) return said(setting);
  if (rest.distance < 0) return 'off';
  return rest.to === 'straightedge' ? said(rest.setting) : `${rest.to} ${said(rest.setting)}`;
}

function ovalWords({ upright, level, size, pin, loop }: PencilOval, name: string, units: Units): string {
  const show = (mm: number): string => {
    const setting = settingOf(mm, finest(units), units);
    return `${said(setting)} ${units}`;
  };
  const axis = ({ edge, setting }: Measured): string => `${said(setting)} ${units} from the ${edge} edge`;
  const pins =
    pin < 0.5 ? 'a circle about their crossing' : `pins ${show(pin)} either side of their crossing, loop ${show(loop)}`;
  return `${sentenceCase(name)}: upright axis ${axis(upright)}, level axis ${axis(level)}; ${show(size.width)} wide and ${show(size.height)} high; ${pins}.`;
}
