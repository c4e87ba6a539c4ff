import { theNamed } from '../mat/layers.ts';
import { error, fail, type Problem, succeed } from '../problems/problem.ts';
import type { LaserMachine } from '../shop/machine.ts';
import { printDecimal } from '../units/print.ts';
import { boardMarks } from './marks.ts';
import type { LaidBoard, LaidOpening, MachineKindWork, Toolpath } from './model.ts';
import { squared } from './square.ts';
import { besideKerf } from './toolpaths/kerf.ts';
import { withTabs } from './toolpaths/tabs.ts';

/** A beam goes straight through: closed paths, half a kerf inside openings and outside of blanks. */
export const laser: MachineKindWork<LaserMachine> = {
  prepare: (job) => succeed(squared(job)),
  reach: ({ kerf }) => Math.max(kerf.x, kerf.y) / 2,
  width: ({ kerf }) => ({ width: kerf.x, height: kerf.y }),
  leastGap: () => 0,
  allowances,
  toolpaths: (board, cut, machine) => {
    const found: Toolpath[] = machine.marks ? [...boardMarks(board, cut, machine, 'letters')] : [];
    const problems: Problem[] = [];
    for (const opening of board.openings) {
      const id = `${opening.id}-${board.layer}`;
      const path = besideKerf(opening.face, machine.kerf, 'in');
      if (typeof path === 'string') {
        problems.push(tooWide(board, opening, machine));
        continue;
      }
      const { tabs } = machine;
      if (tabs === undefined) {
        found.push({ operation: 'inner', path, id, reversible: true });
        continue;
      }
      const runs = withTabs(path, tabs.count, tabs.width + Math.max(machine.kerf.x, machine.kerf.y));
      if (runs === undefined) problems.push(noRoomForTabs(opening, tabs.count));
      for (const [i, run] of (runs ?? []).entries())
        found.push({ operation: 'inner', path: run, id: `${id}-${i + 1}`, reversible: true });
    }
    if (machine.outside) {
      const path = besideKerf(board.outline, machine.kerf, 'out');
      if (typeof path !== 'string')
        found.push({ operation: 'outer', path, id: `outside-${board.layer}`, reversible: true });
    }
    return problems.length > 0 ? fail(problems) : succeed(found);
  },
};

const mm = (length: number): string => printDecimal(length, 'mm', 3).text;

function allowances({ kerf, tabs }: LaserMachine): readonly string[] {
  const none = kerf.x === 0 && kerf.y === 0;
  const both = kerf.x === kerf.y ? `kerf ${mm(kerf.x)} mm` : `kerf ${mm(kerf.x)} mm across, ${mm(kerf.y)} mm up`;
  return [
    none
      ? 'no kerf is allowed for: cut the coupon, measure it and give the machine its kerf'
      : `${both}: openings are drawn half of it smaller all round, outsides half of it larger`,
    ...(tabs === undefined
      ? []
      : [`${tabs.count} tabs of ${mm(tabs.width)} mm hold each fallout: part them with a knife`]),
  ];
}

function tooWide(board: LaidBoard, { name, path }: LaidOpening, machine: LaserMachine): Problem {
  const { x, y } = machine.kerf;
  return error(
    'kerf-too-wide',
    path,
    `${name} in ${theNamed(board.name)} is nowhere wide enough for a kerf of ${mm(Math.max(x, y))} mm, or falls apart with it`,
    'is the kerf of the machine right?',
  );
}

function noRoomForTabs({ name, path }: LaidOpening, count: number): Problem {
  return error(
    'tabs-no-room',
    path,
    `${count} tabs find no room on the sides of ${name}`,
    'give the machine fewer or narrower tabs',
  );
}
