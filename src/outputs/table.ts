import { nearest } from '../problems/nearest.ts';
import { error, fail, type Result, succeed } from '../problems/problem.ts';
import { quoted } from '../problems/quoted.ts';
import type { Output } from './output.ts';
import type { OutputId } from './records.ts';

const PAPER = ['paper', 'printer'] as const;
const DOCUMENT = ['format', 'png', 'dpi'] as const;
const FORMATS = ['pdf', 'svg', 'png'] as const;

type Table = { readonly [Id in OutputId]: Output<Id> };

/** Every output there is. What draws it is loaded when it is wanted and not before. */
const TABLE: Table = {
  pattern: {
    id: 'pattern',
    summary: 'full-scale pattern for the back of the board, one for each layer',
    needs: 'a job',
    use: 'full scale',
    options: [...PAPER, 'extent', 'svg', 'tiles', ...DOCUMENT, 'show'],
    formats: [...FORMATS, 'tiles'],
    examples: ['pattern examples/heron/job.yaml --paper letter --out heron-pattern'],
    ofEveryJob: () => [{ format: ['pdf', 'svg'] }],
    load: () => import('./rows/pattern.ts'),
  },
  proof: {
    id: 'proof',
    summary: 'the framed piece in colour and to scale, with its sizes and prices, for the customer to sign',
    needs: 'a job',
    use: 'sheet',
    options: [...PAPER, 'date', 'dimensions', 'vary', 'svg', ...DOCUMENT],
    formats: FORMATS,
    examples: [
      'proof examples/heron/job.yaml --date "12 March 2031"',
      "proof examples/heron/job.yaml --vary 'mat.layers[1].board=slate-4,bone-4' --png",
    ],
    ofEveryJob: () => [{ format: ['pdf', 'svg'] }],
    load: () => import('./rows/proof.ts'),
  },
  ticket: {
    id: 'ticket',
    summary: 'the bench ticket: every number in the order in which the bench works, to be ticked off',
    needs: 'jobs',
    use: 'readings',
    options: [...PAPER, 'number', 'run', 'fallouts', 'svg', ...DOCUMENT],
    formats: FORMATS,
    notes:
      'Several jobs have a list of the run in front: one order of work, each setting of the guide once a board; --run makes that list alone. With --fallouts a blank out of a fallout waits for the mat that it drops out of, as in the plan of stock --fallouts.',
    examples: ['ticket examples/heron/job.yaml --number 41', 'ticket monday/*.yaml --number A-07 --out monday/bench'],
    ofEveryJob: () => [{}],
    load: () => import('./rows/ticket.ts'),
  },
  intake: {
    id: 'intake',
    summary: 'form to take a job in with the customer, empty or filled in from a job',
    needs: 'a job or none',
    use: 'readings',
    options: [...PAPER, 'number', 'units', 'svg', ...DOCUMENT],
    formats: FORMATS,
    examples: ['intake --paper letter --out forms', 'intake examples/heron/job.yaml --number 41'],
    ofEveryJob: () => [{}],
    load: () => import('./rows/intake.ts'),
  },
  placement: {
    id: 'placement',
    summary: 'full-scale sheet that shows where the artwork and its hinges go on the backing',
    needs: 'a job',
    use: 'full scale',
    options: [...PAPER, 'extent', 'svg', 'tiles', ...DOCUMENT],
    formats: [...FORMATS, 'tiles'],
    examples: ['placement examples/heron/job.yaml'],
    ofEveryJob: ({ mat }) => (mat.openings.some(({ artwork }) => artwork !== undefined) ? [{}] : []),
    load: () => import('./rows/placement.ts'),
  },
  blanks: {
    id: 'blanks',
    summary: 'every blank of some jobs by board, with stop settings and counts',
    needs: 'jobs',
    use: 'readings',
    options: [...PAPER, 'number', 'svg', ...DOCUMENT],
    formats: FORMATS,
    examples: ['blanks monday/*.yaml --number 41'],
    ofEveryJob: () => [{}],
    load: () => import('./rows/blanks.ts'),
  },
  labels: {
    id: 'labels',
    summary: 'stickers for blanks and backs, on a grid of rows and columns',
    needs: 'jobs',
    use: 'readings',
    options: [...PAPER, 'number', 'rows', 'columns', 'gap', 'margin', 'skip', 'svg', ...DOCUMENT],
    formats: FORMATS,
    examples: ['labels examples/heron/job.yaml --rows 8 --columns 3 --gap "3 mm, 0 mm" --skip 4'],
    ofEveryJob: () => [{}],
    load: () => import('./rows/labels.ts'),
  },
  stock: {
    id: 'stock',
    summary: 'every blank of some jobs on the shop’s sheets, cut by cut, on as few as can be',
    needs: 'jobs',
    oneShop: true,
    use: 'readings',
    options: [...PAPER, 'number', 'fallouts', 'backing', 'cost', 'effort', 'seed', 'svg', ...DOCUMENT],
    formats: FORMATS,
    notes: `All jobs are of one shop. The same jobs, shop and seed give the same plan on every machine. Offcuts on the shelf are
used before a sheet is opened. Each plan has a number, and is noted beside the shop's file until it is cut: --cut books exactly it,
once: counts and shelf are brought up to date. --undo takes that back.`,
    examples: [
      'stock monday/*.yaml',
      'stock monday/*.yaml --fallouts --effort 10',
      'stock --cut 4127-0936 --shop monday/shop.yaml',
    ],
    load: () => import('./rows/stock.ts'),
  },
  jig: {
    id: 'jig',
    summary: 'sheets that measure the printer, the guide and the heads; gauges, sizes to try, a wall chart',
    needs: 'a job or none',
    use: 'sheet',
    newPrinter: ({ kind }) => kind === 'printer',
    options: [...PAPER, 'head', 'thickness', 'cut', 'svg', ...DOCUMENT],
    formats: FORMATS,
    examples: [
      'jig printer --paper letter --printer office',
      'jig head --thickness "1.4 mm, 3 mm"',
      'jig art-corner examples/heron/job.yaml --cut svg,dxf',
      'jig --list',
    ],
    load: () => import('./rows/jig.ts'),
  },
  cutfile: {
    id: 'cutfile',
    summary: 'file for a laser, a drag knife or a bevel head: SVG, DXF or HP-GL',
    needs: 'a job',
    options: ['machine', 'format', 'dialect', 'together', 'turn', 'coupon'],
    formats: ['svg', 'dxf', 'hpgl'],
    examples: [
      'cutfile examples/heron/job.yaml --machine laser --format svg',
      'cutfile examples/heron/job.yaml --machine laser --coupon',
    ],
    ofEveryJob: ({ shop }) => [...shop.machines.keys()].map((machine) => ({ machine })),
    load: () => import('./rows/cutfile.ts'),
  },
};

/** In the order of lists. */
export const OUTPUTS: readonly Output[] = Object.values(TABLE);

export function findOutput<Id extends OutputId>(id: Id): Result<Table[Id]> {
  if (typeof id === 'string' && Object.hasOwn(TABLE, id)) return succeed(TABLE[id]);
  const known = Object.keys(TABLE);
  const near = typeof id === 'string' ? nearest(id, known) : undefined;
  const hint = `${near === undefined ? '' : `did you mean ${near}? `}there are ${known.join(', ')}`;
  return fail([error('output-unknown', [], `there is no output ${quoted(String(id))}`, hint)]);
}
