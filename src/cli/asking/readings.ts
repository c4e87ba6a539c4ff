import { SIDES } from '../../geometry/sides.ts';
import type { MachineKind } from '../../shop/machine.ts';
import type { Calibrated } from '../../shop/readings/readings.ts';
import { type Asker, flow, length, line, quoted } from './asker.ts';
import { askCoupon } from './coupon.ts';

export type { Asker } from './asker.ts';

/** What the questions offer as an answer. */
export interface Offered {
  readonly printers: readonly string[];
  readonly heads: readonly string[];
  readonly machines: readonly { readonly id: string; readonly kind: MachineKind }[];
}

/** Readings by question and answer, as the text of a readings file. */
export async function askReadings(kind: Calibrated, ask: Asker, offered: Offered): Promise<string> {
  switch (kind) {
    case 'printer':
      return printer(ask, offered.printers[0] ?? 'office');
    case 'guide':
      return guide(ask);
    case 'head':
      return head(ask, offered.heads[0] ?? 'pull-45');
    case 'bevel':
      return bevel(ask, offered.heads[0] ?? 'pull-45');
    case 'laser':
    case 'knife':
    case 'bevel-coupon':
      return askCoupon(kind, ask, offered.machines);
    default: {
      const never: never = kind;
      throw new TypeError(`unknown kind ${JSON.stringify(never)}`);
    }
  }
}

/** The two papers that decide whether a length near 94 or 97 % is believed, as lines of a readings file. */
export async function askPapers(ask: Asker): Promise<string> {
  const paper = await ask.text('Which paper is the print dialogue set to?', { example: 'letter' });
  const madeFor = await ask.text('Which paper does the sheet say that it is made for?', { example: 'letter' });
  return `paper: ${quoted(paper)}\nmadeFor: ${quoted(madeFor)}\n`;
}

async function several(ask: Asker, what: string, one: () => Promise<string>): Promise<string> {
  let list = '';
  do list += `  - ${await one()}\n`;
  while (await ask.confirm(`Another ${what}?`, false));
  return list;
}

async function printer(ask: Asker, usual: string): Promise<string> {
  const name = await ask.text('Which printer? The name that shop.yaml gives it, or a new one', { example: usual });
  const nominal = await length(ask, 'What are the lines meant to measure? (empty: 200 mm)', '200 mm', true);
  const sheets = await several(ask, 'sheet', async () =>
    flow([
      ['across', await length(ask, 'The line across measures, in mm', '199.3')],
      ['down', await length(ask, 'The line down measures, in mm', '199.6')],
      ...(await diagonals(ask)),
    ]),
  );
  return `printer: ${quoted(name)}\n${line('line', nominal)}sheets:\n${sheets}`;
}

async function diagonals(ask: Asker): Promise<readonly (readonly [string, string | undefined])[]> {
  const falling = await length(ask, 'Corner to corner from the top left, in mm (empty: not measured)', '282.3', true);
  if (falling === undefined) return [];
  return [
    ['falling', falling],
    ['rising', await length(ask, 'Corner to corner from the bottom left, in mm', '282.4')],
  ];
}

async function guide(ask: Asker): Promise<string> {
  const question = "How thick is the strips' board, in mm? (empty: the bar keeps its height)";
  const thickness = await length(ask, question, '1.4', true);
  const strips = await several(ask, 'strip', async () =>
    flow([
      ['setting', await length(ask, 'The guide was set to', '2 in')],
      ['width', await length(ask, 'The strip is wide, at its face, in mm', '50.9')],
    ]),
  );
  return `${line('thickness', thickness)}strips:\n${strips}`;
}

async function head(ask: Asker, usual: string): Promise<string> {
  const name = await ask.text('Which head? The name that shop.yaml gives it', { example: usual });
  const proof = await ask.confirm('Is this the proof, cut with the corrected marks?', false);
  const blade = await ask.text('Which blade? (empty: not kept)', { example: '0.3 mm, fresh', optional: true });
  const depth = await ask.text('How deep is it set? (empty: not kept)', {
    example: 'just scratches the slip sheet',
    optional: true,
  });
  const pieces = await several(ask, 'test opening', async () => {
    const thickness = await length(ask, 'How thick is its board, in mm?', '1.4');
    const sides: [string, string][] = [];
    for (const side of SIDES) {
      const start = await length(ask, `${side} side: past the corner where it starts, in mm`, '4.2');
      const stop = await length(ask, `${side} side: past the corner where it stops, in mm`, '2.6');
      sides.push([
        side,
        flow([
          ['start', start],
          ['stop', stop],
        ]),
      ]);
    }
    return flow([['thickness', thickness], ...sides]);
  });
  const kept = (answer: string | undefined) => (answer === undefined ? undefined : quoted(answer));
  return `head: ${quoted(name)}\n${proof ? 'proof: true\n' : ''}${line('blade', kept(blade))}${line('depth', kept(depth))}pieces:\n${pieces}`;
}

async function bevel(ask: Asker, usual: string): Promise<string> {
  const name = await ask.text('Which head? The name that shop.yaml gives it', { example: usual });
  const strips = await several(ask, 'strip', async () =>
    flow([
      ['thickness', await length(ask, 'How thick is the board, in mm?', '3.2')],
      ['setback', await length(ask, 'How wide is the bevel from above, by the wedge, in mm?', '3.1')],
    ]),
  );
  return `head: ${quoted(name)}\nstrips:\n${strips}`;
}
