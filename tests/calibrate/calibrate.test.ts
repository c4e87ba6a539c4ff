import { describe, expect, test } from 'vitest';
import { type Calibration, type CalibrationRequest, calibrate } from '../../src/calibrate/calibrate.ts';
import { showProblem } from '../../src/problems/show.ts';
import { readShop } from '../../src/shop/read-shop.ts';
import { WRONG_READINGS } from './wrong-readings.ts';

const SHOP = `# Saltmarsh Print Room
units: in
printers: {office: {x: 0.999, y: 1.001}}   # the old drum
guide: {graduation: 1/16 in, setAt: 1.4 mm, a: 0, b: 1}
heads:
  pull-45: {bevel: 45, opening: left, start: 1 mm, stop: 0 mm}
  push-90: {bevel: 90, opening: right}
`;

type Asked = Partial<CalibrationRequest> & Pick<CalibrationRequest, 'kind' | 'text'>;
const request = (asked: Asked): CalibrationRequest => ({
  file: 'readings.yaml',
  shop: { text: SHOP, file: 'shop.yaml' },
  date: '2026-03-01',
  ...asked,
});

function done(asked: Asked): Calibration & { readonly codes: readonly string[] } {
  const result = calibrate(request(asked));
  if (!result.ok) throw new Error(result.problems.map(showProblem).join('\n'));
  return { ...result.value, codes: result.warnings.map((w) => w.code) };
}

function shopOf(text: string) {
  const shop = readShop({ text, file: 'shop.yaml' });
  if (!shop.ok) throw new Error(shop.problems.map(showProblem).join('\n'));
  return shop.value;
}

describe('readings that cannot be used', () => {
  test.each(WRONG_READINGS)('%s: %j', (kind, text, code, place, words) => {
    const result = calibrate(request({ kind, text }));
    expect(result.ok).toBe(false);
    if (result.ok) return;
    const found = result.problems.find((problem) => problem.code === code);
    expect(result.problems.map((problem) => problem.code)).toContain(code);
    expect(`${found!.line}:${found!.column}`).toBe(place);
    expect(found!.file).toBe('readings.yaml');
    expect(showProblem(found!)).toMatch(words);
  });

  test('a shop that cannot be read is told instead', () => {
    const result = calibrate(request({ kind: 'guide', text: '', shop: { text: 'guide: [', file: 'shop.yaml' } }));
    expect(result.ok ? [] : result.problems.map((p) => p.file)).toEqual(['shop.yaml']);
  });
});

describe('a printer', () => {
  test('the 200 mm line measures 199.3: the correction, its uncertainty and the readings go into the shop', () => {
    const text =
      'printer: office\nsheets:\n  - {across: 199.3, down: 199.6, falling: 282.1, rising: 282.1}\nblank: {top: 4, bottom: 5, sides: 3}\n';
    const found = done({ kind: 'printer', text });
    const printer = shopOf(found.shopText).printers.get('office')!;
    expect([printer.x, printer.y]).toEqual([0.9965, 0.998]);
    expect(printer.margin).toEqual({ top: 4, right: 3, bottom: 5, left: 3 });
    // One line read to 0.25 mm: 0.25/200.
    expect(found.shopText).toContain('x 0.9965 ± 0.0013, y 0.9980 ± 0.0013');
    expect(found.shopText).toContain('# the old drum');
    expect(found.shopText).toContain('across: 199.3 mm');
    expect(found.shopText).toContain('date: 2026-03-01');
    expect(found.codes).toEqual([]);
  });

  test('97 % is believed where the paper that is set is said and right (check values 48 and 49)', () => {
    const lines = 'sheets: [{across: 97, down: 97.1}]\nline: 100\n';
    const refused = calibrate(request({ kind: 'printer', text: `printer: office\n${lines}` }));
    expect(refused.ok ? '' : refused.problems[0]!.code).toBe('calibrate-paper-unsaid');
    const found = done({ kind: 'printer', text: `printer: office\nmadeFor: a4\npaper: A4\n${lines}` });
    expect(found.codes).toEqual(['calibrate-wrong-paper']);
    // Offered, not written: every later sheet would come out wrong.
    expect(found.changed).toBe(false);
    expect(found.shopText).toBe(SHOP);
    expect(found.offer!.question).toContain('97.00 % and 97.10 %');
    const text = `printer: office\nmadeFor: a4\npaper: A4\n${lines}`;
    const confirmed = done({ kind: 'printer', text, confirmed: true });
    expect(shopOf(confirmed.shopText).printers.get('office')!.x).toBeCloseTo(0.97, 9);
    expect(confirmed.changed).toBe(true);
  });

  test('a printer that the shop does not know yet, and a shop that is not there yet', () => {
    const text = 'printer: attic-laser\nsheets: [{across: 150.2, down: 150.1}]\nline: 150\n';
    expect([...shopOf(done({ kind: 'printer', text }).shopText).printers.keys()]).toEqual(['office', 'attic-laser']);
    const { shop: _, ...without } = request({ kind: 'printer', text });
    const result = calibrate(without);
    expect(result.ok && shopOf(result.value.shopText).printers.get('attic-laser')!.x).toBeCloseTo(1.00133, 9);
  });
});

describe('a guide', () => {
  test('a and b, the thickness that they hold for, and the rest', () => {
    const strips = [25, 50, 100, 200, 280].map((s) => `  - {setting: ${s}, width: ${(0.4 + 1.003 * s).toFixed(3)}}`);
    const found = done({ kind: 'guide', text: `thickness: 3\nstrips:\n${strips.join('\n')}\n` });
    const guide = shopOf(found.shopText).guide!;
    expect(guide.a).toBeCloseTo(0.4, 9);
    expect(guide.b).toBeCloseTo(1.003, 5);
    expect(guide.setAt).toBe(3);
    expect(found.words.join('\n')).toContain('less than can be read');
    // Not said: it is taken for the one that the shop's file has.
    const silent = done({ kind: 'guide', text: `strips:\n${strips.join('\n')}\n` });
    expect(silent.codes).toEqual(['calibrate-thickness-missing']);
  });

  const strips = (widths: readonly number[]) =>
    `thickness: 1.4\nstrips:\n${[50, 100, 150, 200, 250].map((s, i) => `  - {setting: ${s}, width: ${widths[i]}}\n`).join('')}`;

  test('a correction that chance makes as well is offered, and written where it is confirmed', () => {
    // Residuals about 0.2 mm either way: a and b are found, but clear of nothing.
    const text = strips([50.2, 99.8, 150.25, 199.8, 250.2]);
    const found = done({ kind: 'guide', text });
    expect(found.words.join('\n')).toContain('the scale counts as true');
    expect(shopOf(found.shopText).guide).toMatchObject({ a: 0, b: 1, setAt: 1.4 });
    expect(found.shopText).toContain('not clear of chance');
    const { a } = found.result as { a: number };
    expect(Math.abs(a)).toBeGreaterThan(0.05);
    expect(shopOf(done({ kind: 'guide', text, confirmed: true }).shopText).guide!.a).toBeCloseTo(a, 2);
    // The same scatter about a scale that starts 1 mm late is a correction.
    const late = done({ kind: 'guide', text: strips([51.2, 100.8, 151.25, 200.8, 251.2]) });
    expect(late.offer).toBeUndefined();
    expect(shopOf(late.shopText).guide!.a).toBeGreaterThan(0.9);
    // Once that is in the file, the same strips change nothing of it.
    const shop = { text: late.shopText, file: 'shop.yaml' };
    const again = done({ kind: 'guide', text: strips([51.1, 100.9, 151.2, 200.8, 251.25]), shop });
    expect(again.offer).toBeDefined();
    expect(shopOf(again.shopText).guide!.a).toBe(shopOf(late.shopText).guide!.a);
  });
});

const openings = (thickness: number, start: readonly number[], stop: readonly number[], more = '') =>
  ['top', 'right', 'bottom', 'left']
    .map((side, i) => `${side}: {start: ${start[i]}, stop: ${stop[i]}${more}}`)
    .reduce((piece, side) => `${piece}, ${side}`, `  - {thickness: ${thickness}`)
    .concat('}\n');

describe('a head', () => {
  const first = `head: pull-45\nblade: fresh\ndepth: just scratches the slip sheet\npieces:\n${openings(1.4, [4.1, 4.2, 4.3, 4.2], [2.6, 2.5, 2.6, 2.7])}${openings(3, [4.6, 4.5, 4.6, 4.7], [2.6, 2.6, 2.6, 2.6])}`;

  test('starts 1.2 mm over, stops 0.4 mm short: start mark u = 1.2 − x, stop mark u = L + 0.4 + x', () => {
    const found = done({ kind: 'head', text: first });
    const head = shopOf(found.shopText).heads.get('pull-45')!;
    expect(head.start).toEqual([
      { thickness: 1.4, offset: -1.2 },
      { thickness: 3, offset: -1.6 },
    ]);
    expect(head.stop[0]).toEqual({ thickness: 1.4, offset: -0.4 });
    expect(head.blade).toBe('fresh');
    expect(head.depth).toBe('just scratches the slip sheet');
    expect(head.date).toBe('2026-03-01');
    const x = head.overrun;
    const { spread } = found.result as { spread: number };
    expect(x).toBeCloseTo(2 * Number(spread.toFixed(2)), 9);
    expect(found.words.join('\n')).toContain(`start mark at u = +${(1.2 - x).toFixed(2)} mm`);
    expect(found.words.join('\n')).toContain(`stop mark at u = L +${(0.4 + x).toFixed(2)} mm`);
    expect(found.words.join('\n')).toContain('exact through the two');
    expect(found.words.at(-1)).toContain('opening on the left hand, counterclockwise');
    // An overrun that the shop wishes stays.
    const wished = { text: SHOP.replace('stop: 0 mm}', 'stop: 0 mm, overrun: 0.5 mm}'), file: 'shop.yaml' };
    expect(shopOf(done({ kind: 'head', text: first, shop: wished }).shopText).heads.get('pull-45')!.overrun).toBe(0.5);
    expect(done({ kind: 'head', text: first, shop: wished }).words.join('\n')).toContain('wishes 0.5 mm, which stays');
  });

  test('boards that differ by no more than 0.1 mm are one thickness', () => {
    const text = `head: pull-45\npieces:\n${openings(1.4, [4.2, 4.2, 4.2, 4.2], [2.6, 2.6, 2.6, 2.6])}${openings(1.46, [4.1, 4.1, 4.1, 4.1], [2.6, 2.6, 2.6, 2.6])}${openings(1.6, [4.4, 4.4, 4.4, 4.4], [2.6, 2.6, 2.6, 2.6])}`;
    const head = shopOf(done({ kind: 'head', text }).shopText).heads.get('pull-45')!;
    expect(head.start).toEqual([
      { thickness: 1.43, offset: -1.15 },
      { thickness: 1.6, offset: -1.4 },
    ]);
  });

  test('what is not yet calibrated is said first', () => {
    const bare = { text: 'heads: {pull-45: {bevel: 45}}\n', file: 'shop.yaml' };
    const result = calibrate(request({ kind: 'head', text: first, shop: bare }));
    expect(result.ok && result.warnings[0]!.message).toContain('not yet calibrated: the printer and the guide');
  });

  test('pricked marks tell a wrong border from a wrong head', () => {
    // Borders 0.5 mm too narrow: every end reads 0.5 less from its corner, and the same from its prick.
    const text = `head: pull-45\npieces:\n${openings(1.4, [3.7, 3.7, 3.8, 3.6], [2.1, 2.1, 2.1, 2.1], ', startPrick: 1.2, stopPrick: -0.4')}`;
    const result = calibrate(request({ kind: 'head', text }));
    const said = result.ok ? result.warnings.find((w) => w.code === 'calibrate-pricks-disagree') : undefined;
    expect(said?.message).toContain('0.5 mm less');
    expect(said?.message).toContain('narrow');
    const right = `head: pull-45\npieces:\n${openings(1.4, [4.2, 4.2, 4.2, 4.2], [2.6, 2.6, 2.6, 2.6], ', startPrick: 1.2, stopPrick: -0.4')}`;
    expect(done({ kind: 'head', text: right }).codes).toEqual([]);
  });

  test('the proof says whether the marks are right, and changes no offset', () => {
    const { shopText } = done({ kind: 'head', text: first });
    const shop = { text: shopText, file: 'shop.yaml' };
    const x = shopOf(shopText).heads.get('pull-45')!.overrun;
    const at = (by: number) => [x + by, x + by, x + by + 0.05, x + by - 0.05].map((v) => Number(v.toFixed(2)));
    const proof = (by: number) => `head: pull-45\nproof: true\npieces:\n${openings(1.4, at(by), at(0))}`;
    const good = done({ kind: 'head', text: proof(0), shop });
    expect(good.result).toMatchObject({ proved: true, good: 8, ends: 8 });
    expect(shopOf(good.shopText).heads).toEqual(shopOf(shopText).heads);
    expect(good.shopText).toContain('proved: 8 of 8 ends within 0.25 mm');
    expect(done({ kind: 'head', text: proof(0.6), shop }).result).toMatchObject({ proved: false, good: 4 });
  });
});

describe('a bevel', () => {
  test('±0.1 mm on a 4-ply board is two degrees; a thick board is better', () => {
    const thin = done({ kind: 'bevel', text: 'head: pull-45\nstrips: [{thickness: 1.4, setback: 1.4}]\n' });
    expect(thin.result).toMatchObject({ angle: expect.closeTo(45, 9), changed: false });
    // dθ = sin²θ/t·0.1 = 2.046°, and a caliper's 0.05 mm beside it.
    expect((thin.result as { uncertainty: number }).uncertainty).toBeCloseTo(Math.hypot(2.0463, 1.0231), 3);
    expect(thin.codes).toEqual(['calibrate-bevel-rough']);
    const thick = done({
      kind: 'bevel',
      text: 'head: pull-45\nstrips: [{thickness: 6, setback: 4.2}, {thickness: 6, setback: 4.2}]\n',
    });
    expect(thick.codes).toEqual([]);
    // tan θ = 6 / 4.2.
    expect(shopOf(thick.shopText).heads.get('pull-45')!.bevel).toBe(55);
  });
});
