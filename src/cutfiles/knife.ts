import type { Path } from '../geometry/path.ts';
import { theNamed } from '../mat/layers.ts';
import { error, fail, type Problem, type Result, succeed } from '../problems/problem.ts';
import type { KnifeMachine } from '../shop/machine.ts';
import { printDecimal } from '../units/print.ts';
import { boardMarks } from './marks.ts';
import type { LaidBoard, LaidOpening, MachineKindWork, Toolpath } from './model.ts';
import { targetRoom } from './registration.ts';
import { squared } from './square.ts';
import { withLead } from './toolpaths/lead.ts';
import { swivelPath } from './toolpaths/swivel.ts';

/** Along a straight stroke a blade's angle fades by e with every length of its offset; two such strokes and an arc follow. */
const SETTLE_OFFSETS = 5;
const LEAST_SETTLE = 1;

export const settleOf = ({ offset }: KnifeMachine): number => Math.max(LEAST_SETTLE, SETTLE_OFFSETS * offset);
/** How far the knife's axis comes away from a cut's line. */
const leadReach = (machine: KnifeMachine): number => machine.lead + settleOf(machine) + machine.offset;

/** A knife that swivels about an axis ahead of its tip: one way for each cut, in from the waste and off into it. */
export const knife: MachineKindWork<KnifeMachine> = {
  prepare: (job) => succeed(squared(job)),
  reach: (machine) => leadReach(machine) + (machine.registration === undefined ? 0 : targetRoom(machine.registration)),
  width: () => ({ width: 0, height: 0 }),
  leastGap: (machine) => 2 * leadReach(machine),
  targetsBeyond: leadReach,
  allowances,
  toolpaths,
};

function toolpaths(
  board: LaidBoard,
  cut: Parameters<typeof boardMarks>[1],
  machine: KnifeMachine,
): Result<readonly Toolpath[]> {
  const found: Toolpath[] = [];
  const problems: Problem[] = [];
  const lead = { radius: machine.lead, settle: settleOf(machine), overcut: machine.overcut };
  const contour = (operation: 'inner' | 'outer', outline: Path, id: string): boolean => {
    const tip = withLead(outline, operation === 'inner' ? 'inside' : 'outside', lead);
    if (tip === undefined) return false;
    const path = swivelPath(tip, machine.offset);
    for (let pass = 1; pass <= machine.passes; pass++) {
      const last = pass === machine.passes;
      const name = machine.passes === 1 ? id : `${id}-pass-${pass}`;
      found.push({ operation: last ? operation : 'score', path, id: name, reversible: false });
    }
    return true;
  };
  if (machine.marks) {
    for (const mark of boardMarks(board, cut, machine, 'ticks'))
      found.push({ ...mark, path: swivelPath(mark.path, machine.offset), reversible: false });
  }
  for (const opening of board.openings) {
    if (contour('inner', opening.face, `${opening.id}-${board.layer}`)) continue;
    problems.push(noRoom(board, opening, machine));
  }
  if (machine.outside) contour('outer', board.outline, `outside-${board.layer}`);
  return problems.length > 0 ? fail(problems) : succeed(found);
}

const mm = (length: number): string => printDecimal(length, 'mm', 3).text;

function allowances({ offset, overcut, passes }: KnifeMachine): readonly string[] {
  return [
    offset === 0
      ? 'no knife offset is allowed for: cut the coupon, measure it and give the machine its offset'
      : `knife offset ${mm(offset)} mm: the axis runs ahead of the tip and goes round every corner`,
    `the blade comes in from the waste and is followed ${mm(overcut)} mm past the beginning`,
    ...(passes === 1 ? [] : [`${passes} passes: all but the last are light, on the layer for scoring`]),
  ];
}

function noRoom(board: LaidBoard, { name, path }: LaidOpening, machine: KnifeMachine): Problem {
  return error(
    'knife-no-room',
    path,
    `${name} in ${theNamed(board.name)} is too small for the knife to come in from its waste`,
    `give the machine a lead smaller than ${mm(machine.lead)} mm, or cut this opening by hand`,
  );
}
