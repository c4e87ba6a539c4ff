import { error, type Problem } from '../problems/problem.ts';
import { defined } from '../read/fields/defined.ts';
import * as defaults from './defaults.ts';
import { MACHINE_KINDS, type Machine, type MachineKind, OPERATIONS, type Operation } from './machine.ts';
import type { ShopInput } from './shop-schema.ts';

type Given = NonNullable<ShopInput['machines']>[string];

/** Keys that one kind of machine has alone. */
const KEYS: Readonly<Record<MachineKind, readonly (keyof Given)[]>> = {
  laser: ['kerf', 'tabs'],
  knife: ['offset', 'overcut', 'lead', 'passes', 'registration'],
  bevel: ['bevel', 'opening', 'start', 'stop', 'spread', 'overrun'],
};

/** What each of those says, for a message. */
const OWN: Readonly<Record<MachineKind, string>> = {
  laser: 'a laser',
  knife: 'a drag knife',
  bevel: 'a bevel head',
};

/** A machine with every default filled in. Its kind is its name's, where it says none. */
export function machineFrom(id: string, given: Given, problems: Problem[]): Machine {
  const path = ['machines', id];
  const kind = given.kind ?? MACHINE_KINDS.find((each) => each === id);
  if (kind === undefined) {
    const message = `the machine ${id} does not say what it cuts with`;
    problems.push(error('machine-kind-missing', path, message, `give kind: ${MACHINE_KINDS.join(' or ')}`));
  }
  for (const other of MACHINE_KINDS) {
    if (kind === undefined || other === kind) continue;
    for (const key of KEYS[other]) {
      if (given[key] === undefined) continue;
      const message = `${key} is for ${OWN[other]}, but ${id} is ${OWN[kind]}`;
      problems.push(error('machine-key-kind', [...path, key], message, `it has ${KEYS[kind].join(', ')}`));
    }
  }
  const machine = filledIn(id, kind ?? 'laser', given);
  problems.push(...layerProblems(machine));
  return machine;
}

/** A machine of which nothing is known but its kind. */
export const plainMachine = (kind: MachineKind): Machine => filledIn(kind, kind, {});

function filledIn(id: string, kind: MachineKind, given: Given): Machine {
  const { MACHINE } = defaults;
  const operations = Object.fromEntries(
    OPERATIONS.map((name) => [name, { ...MACHINE.operations[name], ...defined(given.operations?.[name] ?? {}) }]),
  ) as Machine['operations'];
  const any = {
    id,
    gap: given.gap ?? MACHINE.gap,
    up: given.up ?? MACHINE.up,
    outside: given.outside ?? kind !== 'bevel',
    marks: given.marks ?? MACHINE.marks,
    notes: given.notes ?? MACHINE.notes,
    format: given.format ?? MACHINE.format[kind],
    dialect: given.dialect ?? MACHINE.dialect,
    tolerance: given.tolerance ?? MACHINE.tolerance,
    line: given.line ?? MACHINE.line,
    scale: { x: given.scale?.x ?? 1, y: given.scale?.y ?? 1 },
    origin: given.origin ?? MACHINE.origin,
    lift: given.lift ?? MACHINE.lift,
    sendSpeeds: given.sendSpeeds ?? MACHINE.sendSpeeds,
    comments: given.comments ?? MACHINE.comments,
    operations,
    ...defined({ bed: given.bed, thickest: given.thickest, travel: given.travel }),
  };
  switch (kind) {
    case 'laser':
      return { ...any, kind, kerf: given.kerf ?? { x: 0, y: 0 }, ...defined({ tabs: given.tabs }) };
    case 'knife':
      return {
        ...any,
        kind,
        offset: given.offset ?? 0,
        overcut: given.overcut ?? MACHINE.overcut,
        lead: given.lead ?? MACHINE.lead,
        passes: given.passes ?? 1,
        ...defined({ registration: given.registration }),
      };
    case 'bevel':
      return {
        ...any,
        kind,
        opening: given.opening ?? defaults.HEAD.opening,
        start: given.start ?? defaults.HEAD.start,
        stop: given.stop ?? defaults.HEAD.stop,
        overrun: given.overrun ?? defaults.overrun(given.spread),
        calibrated: given.start !== undefined && given.stop !== undefined,
        ...defined({ bevel: given.bevel }),
      };
    default: {
      const never: never = kind;
      return never;
    }
  }
}

/** What is never cut must not share a layer, a colour or a pen with what is. */
function layerProblems({ id, operations }: Machine): readonly Problem[] {
  const { note } = operations;
  const cut = OPERATIONS.filter((name): name is Operation => name !== 'note');
  return cut.flatMap((name) => {
    const its = operations[name];
    const shared = (['layer', 'colour', 'pen'] as const).filter(
      (key) => its[key] === note[key] && !(key === 'pen' && note.pen === 0),
    );
    return shared.map((key) =>
      error(
        'machine-note-cut',
        ['machines', id, 'operations'],
        `notes have the same ${key} as the operation ${name}, so that they would be cut`,
        `give notes a ${key} of their own, or leave them out with notes: false`,
      ),
    );
  });
}
