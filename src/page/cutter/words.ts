import type { Setting } from '../../bench/model.ts';
import type { CutStep, Lot, LotStep, ToolStep, WorkStep } from '../../bench/work/model.ts';
import { defined } from '../../problems/defined.ts';
import { printDecimal } from '../../units/print.ts';
import type { CutEnds, Steps } from '../engine/answers.ts';
import { shown } from '../state/shown.ts';

/** What stands on the screen of one step. */
export interface StepWords {
  /** What is done, in a few words. */
  readonly title: string;
  /** What is read from two metres away: a reading, or what else the step is about. */
  readonly big: string;
  /** Beside it, smaller: its unit, scant or full. */
  readonly unit: string;
  /** Which edge lies on the guide, where the scribe starts and stops. */
  readonly lines: readonly string[];
}

/** To the hundredth, as a head is set. */
const depthWords = (mm: number): { readonly big: string; readonly unit: string } => ({
  big: printDecimal(mm, 'mm', 2).text,
  unit: 'mm',
});

const settingUnit = ({ unit, sense }: Setting): string => (sense === 'exact' ? unit : `${unit} ${sense}`);
const reading = (setting: Setting): string =>
  `${setting.amount} ${setting.unit}${setting.sense === 'exact' ? '' : ` ${setting.sense}`}`;

export function stepWords(index: number, { order, ends, rests }: Steps): StepWords {
  const step = order.steps[index]!;
  const lot = 'lot' in step ? order.lots[step.lot] : undefined;
  if (step.kind === 'cut')
    return cutWords({ ...step, ...defined({ rest: step.rest ?? rests[index] }) }, lot!, ends[index]);
  return lot === undefined ? toolWords(step as ToolStep) : lotWords(step as LotStep, lot);
}

function toolWords(step: ToolStep): StepWords {
  switch (step.kind) {
    case 'head':
      return {
        title: 'Take up the head',
        big: step.head.id,
        unit: `${step.head.angle}°`,
        lines: [
          step.head.handHeld ? 'By hand along the straightedge.' : 'On the bar.',
          'Mind the blade: follow its maker’s manual.',
        ],
      };
    case 'depth':
      return {
        title: step.passes > 1 ? `Set the depth, pass ${step.pass} of ${step.passes}` : 'Set the depth',
        ...depthWords(step.depth),
        lines: ['Through the board, just scratching the slip sheet. Try it on an offcut.'],
      };
    case 'guide':
      return { title: 'Set the guide', big: step.setting.amount, unit: settingUnit(step.setting), lines: [] };
    case 'guide-off':
      return { title: 'Take the guide off', big: 'Guide off', unit: '', lines: ['What follows is laid by a rule.'] };
    default: {
      const never: never = step;
      throw new TypeError(`unknown step ${JSON.stringify(never)}`);
    }
  }
}

function lotWords(step: LotStep, lot: Lot): StepWords {
  const all = lot.count > 1 ? [`All ${lot.count} pieces.`] : [];
  const say = (title: string, big: string, ...lines: readonly string[]): StepWords => ({
    title,
    big,
    unit: '',
    lines: [...lines, ...all],
  });
  switch (step.kind) {
    case 'marks':
      return say('Mark the start and stop of every cut', 'Marks', `${sided(lot)} up, from the pattern or by a rule.`);
    case 'slip':
      return say(
        'Lay a slip sheet into the opening above',
        step.of === 'fallout' ? 'Its fallout' : 'Waste board',
        `As thick as the mat above: ${printDecimal(step.thickness, 'mm', 2).text} mm.`,
      );
    case 'fix':
      return say(
        'Fix the under mat to the back of the mat above',
        'Fix',
        step.short > 0 ? `${shown(step.short)} short of every edge.` : 'All edges flush.',
        ...(step.tapedFallout ? ['One piece of tape on the fallout.'] : []),
      );
    case 'curves':
      return say('Cut the curves by the pattern', 'Curves', `Openings ${step.openings.join(', ')}.`);
    case 'lettering':
      return say('Cut the lettering by the pattern', 'Letters');
    case 'ink':
      return say('Rule the ink lines on the face', 'Ink', `Around openings ${step.openings.join(', ')}.`);
    case 'corners':
      return say(
        'Free the corners from the back',
        'Corners',
        `Up to ${printDecimal(step.most, 'mm', 2).text} mm at each.`,
      );
    case 'lift':
      return say(
        'Lift the fallouts out',
        'Fallouts',
        step.layers.length === 1 ? `Of layer ${step.layers[0]}.` : `Of layers ${step.layers.join(' and ')}, together.`,
      );
    case 'join':
      return say('Put the mats together', 'Join', 'Look at the reveals from the face before they are fixed.');
    default: {
      const never: never = step;
      throw new TypeError(`unknown step ${JSON.stringify(never)}`);
    }
  }
}

const sided = ({ up }: Lot): string => (up === 'back' ? 'Back' : 'Face');

/** Edges by where they lie while TOP is up; how the board lies now the picture shows. */
function cutWords(step: CutStep, lot: Lot, ends: CutEnds | undefined): StepWords {
  const { setting, edge, far, rest, side, part, opening, pass } = step;
  const what = `Cut ${step.stroke}: ${side} side${part === undefined ? '' : `, part ${part}`}${lot.work === 'groove' ? ' of the groove' : ''}`;
  const where =
    ends === undefined
      ? ['Start and stop by the marks.']
      : [`Start ${reading(ends.start)}, stop ${reading(ends.stop)}, from the edge where it begins.`];
  const again = lot.depths.length > 1 ? [`Pass ${pass} of ${lot.depths.length}.`] : [];
  const title = `${what}${opening > 1 ? `, opening ${opening}` : ''}`;
  if (setting !== undefined) {
    const on = far ? `FAR edge on the guide: the ${edge} edge.` : `The ${edge} edge on the guide.`;
    return { title, big: setting.amount, unit: settingUnit(setting), lines: [on, ...where, ...again] };
  }
  if (rest !== undefined && rest.distance >= 0) {
    const to = { bar: 'the bar’s edge', straightedge: 'the straightedge', line: 'the line on the back' }[rest.to];
    const from = rest.from === 'edge' ? 'the edge' : 'the farthest corner';
    const { setting: laid } = rest;
    return {
      title,
      big: laid.amount,
      unit: settingUnit(laid),
      lines: [`By a rule, from ${from} to ${to}.`, ...where, ...again],
    };
  }
  return {
    title,
    big: sideWord(side),
    unit: '',
    lines: [
      lot.head.handHeld
        ? 'Along the straightedge, by the line on the back.'
        : 'By the line on the back: the bar would lie off the board.',
      ...where,
      ...again,
    ],
  };
}

const sideWord = (side: string): string => `${side.charAt(0).toUpperCase()}${side.slice(1)}`;

/** One line of the list of all steps. */
export function stepLine(step: WorkStep, index: number, all: Steps): string {
  const { title, big, unit } = stepWords(index, all);
  const lot = 'lot' in step ? all.order.lots[step.lot] : undefined;
  const piece = step.kind === 'cut' && step.of > 1 ? `, piece ${step.piece} of ${step.of}` : '';
  return [
    lot === undefined ? '' : `${lot.title}, ${lot.name}${piece}: `,
    title,
    unit === '' ? '' : `, ${big} ${unit}`,
  ].join('');
}
