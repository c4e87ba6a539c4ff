import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import {
  type BuildOptions,
  build,
  type CalibrationRequest,
  calibrate,
  everything,
  type Limits,
  make,
  type OutputId,
  type OutputOptions,
  type Problem,
  solveJob,
} from '../../src/index.ts';

/** Codes that no other test brings about, each by the least that does. */

const MM = 'units: mm\n';
const MAT = 'mat: {outer: 200 x 300}\n';
const JOB = `${MM}${MAT}openings: [{size: 100 x 150}]\n`;
const TINY = `${MM}${MAT}openings: [{size: 5 x 5}]\n`;

/** Not 2 mm wide. */
const NARROW = JOB.replace('size: 100 x 150', 'outline: "50,50 150,50 150,51.5 50,51.5"').replace(
  '300}',
  '300, layers: [{bevel: 90}]}',
);

/** Sixty small openings, eight millimetres apart. */
const CROWD = `${MM}mat: {border: 20}
openings: [${Array.from({ length: 60 }, (_, i) => `{name: n${i}, size: 26 x 18}`).join(', ')}]
arrange: {columns: 10, gap: 8}
`;

async function built(job: string, options: BuildOptions = {}, shop?: string): Promise<readonly Problem[]> {
  const source = shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } };
  const made = await build(job, { ...source, ...options });
  return made.ok ? made.warnings : made.problems;
}

const cut = (machine: string | undefined, shop?: string, job = JOB, more: BuildOptions = {}) =>
  built(job, { documents: ['cutfile'], ...(machine === undefined ? {} : { machine }), ...more }, shop);

const machine = (text: string): string => `${MM}machines: {m: {${text}}}\n`;

const proof = (job: string, options: BuildOptions = {}) => built(job, { documents: ['proof'], ...options });

async function calibrated(kind: CalibrationRequest['kind'], text: string, shop?: string): Promise<readonly Problem[]> {
  const source = shop === undefined ? {} : { shop: { text: shop, file: 'shop.yaml' } };
  const made = calibrate({ kind, text, file: 'readings.yaml', date: '2026-03-01', ...source });
  return made.ok ? made.warnings : made.problems;
}

/** Of one job; of as many as are named there. */
async function made(id: OutputId, options: OutputOptions = {}, count = 1): Promise<readonly Problem[]> {
  const solved = solveJob(JOB);
  if (!solved.ok) return solved.problems;
  const jobs = Array.from({ length: count }, () => solved.value);
  const one = await make(id, { jobs }, options);
  return one.ok ? one.warnings : one.problems;
}

/** Everything of one job. */
async function all(limits: Limits): Promise<readonly Problem[]> {
  const solved = solveJob(JOB);
  if (!solved.ok) return solved.problems;
  const one = await everything(solved.value, 0, {}, {}, limits);
  return one.ok ? one.warnings : one.problems;
}

const HERON = new Uint8Array(readFileSync('examples/heron/heron.png'));
const withPicture = (name: string) => JOB.replace('size: 100 x 150', `artwork: 105 x 135, picture: ${name}`);

const ROWS: readonly (readonly [code: string, made: () => Promise<readonly Problem[]>])[] = [
  ['vary-unreadable', () => proof(JOB, { vary: 'mat' })],
  ['vary-path', () => proof(JOB, { vary: 'openings[3].size=1 x 1' })],
  ['glyph-missing', () => built(`title: "\u{10fffd}"\n${JOB}`)],
  ['script-unshaped', () => built(`title: "שלום"\n${JOB}`)],
  ['price-one', () => built(JOB, {}, 'boards: {b: {price: {}}}\n')],
  ['price-per', () => built(JOB, {}, 'boards: {b: {price: {each: 3}}}\n')],
  [
    'calibrate-bevel-uneven',
    () =>
      calibrated(
        'bevel',
        `${MM}head: h\nstrips: [{thickness: 3, setback: 3}, {thickness: 3, setback: 2}, {thickness: 3, setback: 4}]\n`,
      ),
  ],
  ['calibrate-order', () => calibrated('bevel', `${MM}head: h\nstrips: [{thickness: 3, setback: 3}]\n`)],
  [
    'calibrate-printer-skew',
    () => calibrated('printer', `${MM}printer: p\nsheets: [{across: 200, down: 200, falling: 284, rising: 281.7}]\n`),
  ],
  [
    'coupon-machine-kind',
    () => calibrated('laser', `${MM}machine: m\nstripsX: 98\nstripsY: 98\n`, machine('kind: knife')),
  ],
  [
    'coupon-scale-absurd',
    () =>
      calibrated(
        'laser',
        `${MM}machine: m\nstripsX: 98\nstripsY: 98\nsquare: {pieceX: 20, holeX: 20, pieceY: 30, holeY: 30}\n`,
        machine('kind: laser'),
      ),
  ],
  [
    'line-off-board',
    () =>
      built(
        'mat: {outer: 16 x 20, layers: [{board: {thickness: 2.9 mm}}]}\nopenings: [{artwork: 9 x 12, overlap: 3/16, shape: outline, outline: "M72.769 60 H130.6 V189.3 C82.8 935.286 128 122.5 163.3 55.935 Z"}]\n',
      ),
  ],
  ['sheets-many', () => all({ sheets: 1 })],
  ['bevel-fixed', () => cut('m', machine('kind: bevel, bevel: 60'))],
  ['bevel-outside', () => cut('m', machine('kind: bevel, bevel: 45, outside: true'))],
  ['bevel-no-stroke', () => cut('m', machine('kind: bevel, start: -9, stop: 9'), TINY)],
  ['coupon-bed-small', () => cut('m', machine('kind: laser, bed: 20 x 20'), JOB, { coupon: true })],
  ['decor-by-hand', () => cut('laser', undefined, JOB.replace('150}', '150, lines: [{kind: groove, distance: 10}]}'))],
  [
    'gap-widened',
    () => cut('m', machine('kind: knife, gap: 0'), JOB.replace('300}', '300, layers: [{}, {}]}'), { together: true }),
  ],
  ['kerf-too-wide', () => cut('m', machine('kind: laser, kerf: 2'), NARROW)],
  ['knife-no-room', () => cut('m', machine('kind: knife, lead: 20'), TINY)],
  ['machine-board-thick', () => cut('m', machine('kind: laser, thickest: 1'))],
  ['machine-missing', () => cut(undefined)],
  ['machine-plain', () => cut('laser')],
  ['machine-unknown', () => cut('lasre')],
  ['machine-which', () => cut('laser', `${MM}machines: {a: {kind: laser}, b: {kind: laser}}\n`)],
  ['registration-no-waste', () => cut('m', machine('kind: knife, registration: 8, outside: false'))],
  ['tabs-no-room', () => cut('m', machine('kind: laser, tabs: {count: 12, width: 3}'), TINY)],
  ['dialect-unknown', () => cut('laser', undefined, JOB, { format: ['dxf'], dialect: 'r9' })],
  ['group-unknown', () => built(JOB, { show: ['cuts'] })],
  [
    'label-without-room',
    () =>
      built(
        `${MM}mat: {outer: 64 x 64, border: 8}\ntitle: ${'A title that is far too long '.repeat(5)}\nopenings: [{}]\n`,
      ),
  ],
  ['label-number-alone', () => built(CROWD)],
  ['picture-missing', () => proof(withPicture('gone.png'))],
  [
    'picture-unreadable',
    () => proof(withPicture('gone.png'), { pictures: async () => ({ why: 'it cannot be read', hint: 'look' }) }),
  ],
  ['picture-name', () => proof(withPicture('heron.jpg'), { pictures: async () => ({ bytes: HERON }) })],
  [
    'picture-profile',
    async () => {
      const profiled = await sharp(HERON).withIccProfile('p3').png().toBuffer();
      return proof(withPicture('heron.png'), { pictures: async () => ({ bytes: new Uint8Array(profiled) }) });
    },
  ],
  ['output-unknown', () => built(JOB, { documents: JSON.parse('["tickte"]') })],
  ['output-jobs', () => made('pattern', {}, 2)],
  ['output-jobs', () => made('ticket', {}, 0)],
  ['sheet-paper', () => proof(JOB, { paper: 'roll:600mm' })],
  ['sheet-paper', () => made('ticket', { paper: '100 x 100 mm' })],
  ['label-grid', () => made('labels', { columns: 400 })],
  ['png-large', () => made('ticket', { format: ['png'], dpi: 600, paper: 'a2' })],
  ['renderer-missing', () => made('ticket', { format: ['png'] })],
  ['cancelled', () => built(JOB, { signal: { aborted: true } })],
  ['placement-artwork-missing', () => made('placement')],
];

describe('messages that no other test makes appear', () => {
  it.each(ROWS)('%s', async (code, made) => {
    const problems = await made();
    const found = problems.find((each) => each.code === code);
    expect(problems.map((each) => each.code)).toContain(code);
    expect(found!.message).not.toMatch(/\.$/);
  });
});
