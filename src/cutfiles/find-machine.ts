import { nearest } from '../problems/nearest.ts';
import { error, fail, type Problem, type Result, succeed, warning } from '../problems/problem.ts';
import { quoted } from '../problems/quoted.ts';
import { MACHINE_KINDS, type Machine, type MachineKind, plainMachine } from '../shop/machine.ts';
import type { Shop } from '../shop/shop.ts';

/**
 * The machine that a name means: one of the shop's by its own name, else the only one of the kind that the name is, else,
 * with a warning, a plain one of that kind. Without a name, the shop's only machine.
 */
export function findMachine(shop: Shop, name: string | undefined): Result<Machine> {
  const known = [...shop.machines.keys()];
  if (name === undefined) {
    const [only] = shop.machines.values();
    if (only !== undefined && known.length === 1) return succeed(only);
    const there = known.length === 0 ? MACHINE_KINDS : known;
    return fail([
      error('machine-missing', [], 'which machine is the file for?', `give --machine ${there.join(' or ')}`),
    ]);
  }
  const own = shop.machines.get(name);
  if (own !== undefined) return succeed(own);
  const kind = MACHINE_KINDS.find((each) => each === name);
  if (kind === undefined) return fail([unknown(name, known)]);
  const alike = [...shop.machines.values()].filter((machine) => machine.kind === kind);
  if (alike.length === 1) return succeed(alike[0]!);
  if (alike.length === 0) return succeed(plainMachine(kind), [plain(kind)]);
  const names = alike.map(({ id }) => id).join(' or ');
  return fail([
    error('machine-which', [], `the shop has several machines of the kind ${kind}`, `give --machine ${names}`),
  ]);
}

function unknown(name: string, known: readonly string[]): Problem {
  const names = [...new Set([...known, ...MACHINE_KINDS])];
  const near = nearest(name, names);
  const there = `known: ${names.join(', ')}`;
  const hint = near === undefined ? there : `did you mean ${near}? ${there}`;
  return error('machine-unknown', [], `there is no machine called ${quoted(name)}`, hint);
}

function plain(kind: MachineKind): Problem {
  const message = `the shop describes no ${kind}: nothing is allowed for, and no bed is checked`;
  return warning('machine-plain', [], message, 'describe it under machines in shop.yaml');
}
