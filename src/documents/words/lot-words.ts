import type { BenchJob } from '../../bench/bench-job.ts';
import type { Lot, LotStep, ToolStep } from '../../bench/work/model.ts';
import { grooveDepth } from '../../mat/decor.ts';
import { theNamed } from '../../mat/layers.ts';
import { sentenceCase } from '../../problems/sentence-case.ts';
import { printDecimal } from '../../units/print.ts';
import type { Units } from '../../units/units.ts';
import { letteringWords } from '../pattern/lettering.ts';
import { length, sides, size } from '../proof/words.ts';
import { fine } from './fine.ts';
import { reverseCornerWords } from './reverse-corners.ts';

/** What is said of each thing that is done at the bench between cuts; the same on a ticket, on a run list and on a screen. */
export function lotWords(step: LotStep, lot: Lot, source: Pick<BenchJob, 'job' | 'mat'>): readonly string[] {
  const { mat, job } = source;
  const { units } = job;
  const index = lot.layer - 1;
  const own = theNamed(lot.name);
  const above = mat.layers[index - 1];
  switch (step.kind) {
    case 'marks':
      return [marksWords(step, lot, source)];
    case 'slip': {
      const down = `${sentenceCase(above!.name)} face down`;
      return step.of === 'fallout'
        ? [`${down}, its fallout back in place: the slip sheet.`]
        : [
            `${down}. Its own fallout, a reverse bevel’s, could not drop out again: lay waste board of ${fine(step.thickness, units)}, cut to lie loose in the opening, in its place as the slip sheet.`,
          ];
    }
    case 'fix': {
      const where = `${length(step.short, units)} short of every edge`;
      const on = step.tapedFallout ? 'one of them on the fallout' : 'none on the waste board';
      return [
        `Fix ${own} (${size(mat.layers[index]!.blank, units)}) face to the back of ${theNamed(above!.name)}${spacerOf(source, index)}, ${where}: short double-sided tapes clear of the cut, ${on}.`,
      ];
    }
    case 'curves':
      return step.openings.map((opening) => {
        const { name, shape, layers } = mat.openings[opening - 1]!;
        const { faceBox, backBox } = layers[index]!;
        return `${sentenceCase(name)} (${shape}): the curves are cut by template or machine; ${size(faceBox, units)} on the face, line on the back ${size(backBox, units)}.`;
      });
    case 'lettering':
      return (mat.lettering ?? []).map((lettering) => {
        const [how, ...held] = letteringWords(lettering, job);
        return `Lettering ${[how, ...held, `${size(lettering.box, units)} over all`].join('; ')}.`;
      });
    case 'ink':
      return inkWords(step.openings, source);
    case 'corners':
      return [reverseCornerWords(step.most).join(' ')];
    case 'lift':
      return [liftWords(step, lot, source)];
    case 'join':
      return mat.layers.slice(1).map((under, i) => {
        const short = under.trimBack > 0 ? `${length(under.trimBack, units)} short of every edge` : 'all edges flush';
        return `Lay ${theNamed(under.name)} face to the back of ${theNamed(mat.layers[i]!.name)}${spacerOf(source, i + 1)}, ${short}; look at the reveals from the face (${revealOf(source, i + 1, units)}), then fix with double-sided tape clear of the opening.`;
      });
    default: {
      const never: never = step;
      throw new TypeError(`unknown step ${JSON.stringify(never)}`);
    }
  }
}

function marksWords({ pencil }: LotStep & { kind: 'marks' }, lot: Lot, source: Pick<BenchJob, 'job' | 'mat'>): string {
  const { job, mat } = source;
  const each = lot.count === 1 ? '' : `, on each of ${lot.count}`;
  if (lot.up === 'face') {
    return `Lay the face’s pattern on the FACE${each}: prick its lines and S and E through, take it off.`;
  }
  const stacked = lot.layer > 1 && job.bench.stack === 'together';
  const edges = stacked ? 'the TOP MAT’s edges' : 'the board’s edges';
  const more = stacked ? `, as the guide: border + ${revealOf(source, lot.layer - 1, job.units)}` : '';
  if (pencil === undefined || pencil.rows.length + pencil.ovals.length === 0) {
    const laid = `Lay pattern ${lot.layer} on the BACK${each}, its tabs to ${edges}${more}`;
    if (job.print.transfer === 'cut-through') return `${laid}: stuck down all over, it stays on.`;
    return lot.layer > 1
      ? `${laid}; prick and mark as before.`
      : `${laid}: prick, take it off, rule lightly, mark S and E.`;
  }
  const names = pencil.patterned.map((opening) => mat.openings[opening - 1]!.name);
  const needed = names.length === 0 ? '' : ` Pattern needed: ${names.join(', ')}.`;
  return `Mark out on the BACK${each}, TOP up, lightly, from ${edges}${more}: each line from its edge, S and E along it from theirs.${needed}`;
}

function liftWords(
  { layers }: LotStep & { kind: 'lift' },
  lot: Lot,
  { mat, job }: Pick<BenchJob, 'job' | 'mat'>,
): string {
  const several = mat.openings.length > 1;
  const held = job.bench.stack === 'together' && lot.layer < mat.layers.length;
  if (held)
    return `Push the ${several ? 'fallouts' : 'fallout'} out to the back and lay ${several ? 'them' : 'it'} aside.`;
  if (layers.length === 1) return `Lift the ${several ? 'fallouts' : 'fallout'} out.`;
  return layers.length === 2 && !several ? 'Lift both fallouts out together.' : 'Lift all fallouts out together.';
}

/** Lines ruled on the face, before its openings are cut. */
function inkWords(openings: readonly number[], { mat, job }: Pick<BenchJob, 'job' | 'mat'>): readonly string[] {
  return openings.flatMap((opening) =>
    (job.openings[opening - 1]!.decor ?? [])
      .filter(({ kind }) => kind === 'ink')
      .map(
        (line) =>
          `Ink line of ${fine(line.width, job.units)} ${lineWords(line, opening, { mat, job })}. Rule it before the opening is cut.`,
      ),
  );
}

type Line = NonNullable<BenchJob['job']['openings'][number]['decor']>[number];

/** Where a line on the face lies. */
function lineWords(line: Line, opening: number, { mat, job }: Pick<BenchJob, 'job' | 'mat'>): string {
  const { name, layers } = mat.openings[opening - 1]!;
  const { border } = layers[0]!;
  const from = {
    top: border.top - line.distance,
    right: border.right - line.distance,
    bottom: border.bottom - line.distance,
    left: border.left - line.distance,
  };
  const along = line.sides === undefined ? 'all round' : `along ${line.sides.join(', ')}`;
  const edges =
    line.sides === undefined
      ? sides(from, job.units)
      : line.sides.map((side) => `${side} ${length(from[side], job.units)}`).join(', ');
  return `${along}, ${length(line.distance, job.units)} outside the face of ${name}; edge to its middle ${edges}, on the FACE`;
}

/** What the grooves of a lot are, line by line. */
export function grooveWords(
  lot: Lot,
  { mat, job }: Pick<BenchJob, 'job' | 'mat'>,
  isByHand: boolean,
): readonly string[] {
  return job.openings.flatMap(({ decor }, i) =>
    (decor ?? [])
      .filter(
        ({ kind, angle, ...line }) =>
          kind === 'groove' && angle === lot.head.angle && grooveDepth({ ...line, angle }) === lot.depths[0],
      )
      .map(
        (line) =>
          `V-groove ${lineWords(line, i + 1, { mat, job })}, before the opening is cut: two passes face up at ${line.angle}°, ${fine(line.width / 2, job.units)} to either side of the middle and ${fine(grooveDepth(line), job.units)} deep where they meet${isByHand ? '' : ', by template or machine'}. Try it on an offcut.`,
      ),
  );
}

/** Head, depth and guide, as they are set. */
export function toolWords(
  step: Exclude<ToolStep, { kind: 'guide' | 'guide-off' }>,
  lot: Lot,
  bevelFace: number,
  units: Units,
): string {
  switch (step.kind) {
    case 'head':
      return `Head ${step.head.id}, ${printDecimal(step.head.angle, 'mm', 1).text}°.`;
    case 'depth': {
      if (step.passes > 1) return `${step.pass === 1 ? 'First' : 'Second'} pass: depth ${fine(step.depth, units)}`;
      if (lot.work === 'groove') return `Blade depth ${fine(step.depth, units)}, for the grooves alone.`;
      const along = lot.head.angle === 90 ? '' : `, ${fine(bevelFace, units)} along the blade`;
      return `Blade depth ${fine(step.depth, units)}${along}: just scratching the slip sheet.`;
    }
    default: {
      const never: never = step;
      throw new TypeError(`unknown step ${JSON.stringify(never)}`);
    }
  }
}

function spacerOf({ job }: Pick<BenchJob, 'job'>, index: number): string {
  const { spacer } = job.mat.layers[index] ?? {};
  return spacer === undefined ? '' : `, a spacer of ${fine(spacer, job.units)} between them`;
}

/** The reveal of a layer where all openings agree on it, else that they differ. */
function revealOf({ mat }: Pick<BenchJob, 'mat'>, index: number, units: Units): string {
  const said = [...new Set(mat.openings.map(({ layers }) => sides(layers[index]!.reveal, units)))];
  return said.length === 1 ? `reveal ${said[0]}` : 'reveals differ by opening, see the checks';
}
