import type { MachineKind } from '../../shop/machine.ts';
import type { CouponKind } from '../../shop/readings/readings.ts';
import { type Asker, flow, length, line, quoted } from './asker.ts';

/** Readings of a machine's coupon by question and answer, as the text of a readings file. */
export async function askCoupon(
  kind: CouponKind,
  ask: Asker,
  machines: readonly { readonly id: string; readonly kind: MachineKind }[],
): Promise<string> {
  const its: MachineKind = kind === 'bevel-coupon' ? 'bevel' : kind;
  const usual = machines.find((machine) => machine.kind === its)?.id ?? its;
  const machine = await ask.text('Which machine? The name that shop.yaml gives it, or a new one', { example: usual });
  return `machine: ${quoted(machine)}\n${await readings(kind, ask)}`;
}

async function readings(kind: CouponKind, ask: Asker): Promise<string> {
  switch (kind) {
    case 'laser': {
      const x = await list(ask, 'The upright strips pushed together', '98.02');
      const y = await list(ask, 'The other strips pushed together', '97.96');
      return `stripsX: ${x}\nstripsY: ${y}\n${line('square', await square(ask))}`;
    }
    case 'knife': {
      const sides = await list(ask, 'A side of a square, at its middle', '40.01');
      return `sides: ${sides}\ndiagonals: ${await list(ask, 'A diagonal, corner to corner', '56.25')}\n`;
    }
    case 'bevel-coupon': {
      const thickness = await length(ask, 'How thick is the board, in mm?', '1.4');
      const starts = await list(ask, 'Past the corner where a cut starts', '4.2');
      const stops = await list(ask, 'Past the corner where a cut stops', '2.6');
      const ends = `thickness: ${thickness}\nstarts: ${starts}\nstops: ${stops}\n`;
      if (!(await ask.confirm('Was the fallout measured at its face and at its back?', true))) return ends;
      const face = await list(ask, 'The fallout at its face', '80.0');
      return `${ends}face: ${face}\nback: ${await list(ask, 'The fallout at its back', '77.2')}\n`;
    }
    default: {
      const never: never = kind;
      throw new TypeError(`unknown kind ${JSON.stringify(never)}`);
    }
  }
}

/** One reading at least, then more until an empty answer. */
async function list(ask: Asker, what: string, example: string): Promise<string> {
  const found = [await length(ask, `${what}, in mm`, example)];
  for (;;) {
    const more = await length(ask, `${what}, once more, in mm (empty: no more)`, example, true);
    if (more === undefined) return `[${found.join(', ')}]`;
    found.push(more);
  }
}

async function square(ask: Asker): Promise<string | undefined> {
  if (!(await ask.confirm('Were the square and its hole measured?', true))) return undefined;
  const pairs: [string, string][] = [];
  for (const [axis, way] of [
    ['X', 'across'],
    ['Y', 'up'],
  ]) {
    pairs.push([`piece${axis}`, await list(ask, `The piece, ${way}`, '29.8')]);
    pairs.push([`hole${axis}`, await list(ask, `Its hole, ${way}`, '30.2')]);
  }
  return flow(pairs);
}
