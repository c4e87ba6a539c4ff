import { describe, expect, it } from 'vitest';
import {
  type BookedPlan,
  bookPlan,
  cutPlan,
  type NewPlan,
  notePlan,
  type Prepared,
  type Problem,
  prepare,
  type Result,
  readShop,
  solveJob,
  undoPlan,
} from '../../src/index.ts';
import { LITTLE, MONDAY, MONDAY_SHOP } from '../documents/stock-days.ts';

const DAY = '2026-03-02';
const shopIs = (text: string) => ({ text, file: 'shop.yaml' });
const plansAre = (text: string) => ({ text, file: 'shop.plans.json' });

function done<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problems.map(({ message }) => message).join('\n'));
  return result.value;
}

const codes = (result: Result<unknown>): readonly string[] =>
  (result.ok ? result.warnings : result.problems).map(({ code }: Problem) => code);

/** Planned once for each shop. */
const PLANNED = new Map<string, Promise<Result<Prepared<'stock'>>>>();

function planned(jobs: Readonly<Record<string, string>>, text: string): Promise<Result<Prepared<'stock'>>> {
  const shop = shopIs(text);
  const solved = Object.entries(jobs).map(([file, job]) => done(solveJob(job, { file, shop })));
  return prepare('stock', { jobs: solved, shop }, { effort: LITTLE });
}

async function mondays(shop = MONDAY_SHOP) {
  const day = PLANNED.get(shop) ?? planned(MONDAY, shop);
  PLANNED.set(shop, day);
  const { record } = done(await day).drawn;
  return { record, plan: record.plan as NewPlan };
}

const booked = (plan: NewPlan, shop: string) => bookPlan(shopIs(shop), plan, DAY);

describe('booking a plan', () => {
  it('takes off what was used, puts on what is kept, and counts the sheets down', async () => {
    const { record, plan } = await mondays();
    const { shopText } = done(booked(plan, MONDAY_SHOP));
    const kept = record.boards.flatMap(({ board, layouts }) =>
      layouts.flatMap(({ offcuts }) => offcuts.flatMap(({ marks }) => marks.map((mark) => [mark, board]))),
    );
    const used = record.boards.flatMap(({ shelf }) => shelf);
    expect([kept.length > 0, used.length > 0]).toEqual([true, true]);
    for (const [mark, board] of kept)
      expect(shopText).toMatch(new RegExp(`- \\{id: ${mark}, board: ${board}, size: .* x .* in, note: .*${DAY}`));
    for (const mark of used) expect(shopText).not.toContain(`id: ${mark},`);
    const counts = { '32 × 40 in': 14, '40 × 60 in': 2 } as Record<string, number>;
    for (const { sheet, count } of record.boards.find(({ board }) => board === 'bone-4')!.fetch)
      expect(shopText).toMatch(
        new RegExp(`size: ${sheet.slice(0, -3).replace('×', 'x')}, price: .*count: ${counts[sheet]! - count}\\b`),
      );
    // The same day again is planned from what is there now, and is another plan.
    const again = await mondays(shopText);
    expect(again.record.boards.flatMap(({ shelf }) => shelf).filter((mark) => used.includes(mark))).toEqual([]);
    expect(again.plan.number).not.toBe(plan.number);
  });

  it('leaves comments at what they spoke of', async () => {
    const { plan } = await mondays();
    const bruised = '# one corner bruised';
    const { shopText } = done(booked(plan, MONDAY_SHOP));
    expect(shopText).toContain(`\n  # S3, cut up ${DAY}: one corner bruised\n`);
    for (const comment of MONDAY_SHOP.match(/#(?! ?[0-9a-f]{6}).*$/gm)!)
      if (comment !== bruised) expect(shopText).toContain(comment);
    const above = MONDAY_SHOP.replace('  - {id: S4', '  # bowed\n  # and grey\n  - {id: S4').concat('# the end\n');
    const two = done(booked((await mondays(above)).plan, above)).shopText;
    expect(two).toContain(`  # S4, cut up ${DAY}: bowed\n  # S4, cut up ${DAY}: and grey\n`);
    expect(two).toMatch(/\n# the end\n$/u);
  });

  it('gives the same plan the same number, whatever else the shop’s file says', async () => {
    const [one, two] = [await mondays(), await mondays(`# new\n${MONDAY_SHOP.replace('a: 0', 'a: 0.1')}`)];
    expect(two.plan.number).toBe(one.plan.number);
    const curlew = done(await planned({ 'curlew.yaml': MONDAY['curlew.yaml']! }, MONDAY_SHOP));
    expect(curlew.drawn.record.plan!.number).not.toBe(one.plan.number);
    const fewer = await mondays(MONDAY_SHOP.replace('count: 14', 'count: 13'));
    expect(fewer.plan.number).not.toBe(one.plan.number);
  });

  it('is refused where the shop is not what the plan was made for', async () => {
    const { plan } = await mondays();
    const shop = (from: string, to: string) => codes(booked(plan, MONDAY_SHOP.replace(from, to)));
    expect(shop('{id: S3', '{id: S8')).toEqual(['booking-offcut-gone']);
    expect(shop('size: 12 1/2 x 32', 'size: 12 x 32')).toEqual(['booking-offcut-gone']);
    expect(shop('size: 32 x 40, price: 9.50, count: 14', 'size: 32 x 41, count: 14')).toEqual(['booking-sheet-gone']);
    expect(shop('price: 9.50, count: 14', 'price: 9.50, count: 0')).toEqual(['booking-sheets-few']);
    const far = booked(plan, MONDAY_SHOP.replace('price: 9.50, count: 14', 'price: 9.50, count: 0'));
    expect(far.ok ? [] : far.problems.map(({ file, line }) => [file, line])).toEqual([['shop.yaml', 10]]);
    expect(shop('units: in', 'units: inn')).toEqual(['value-unknown']);
  });

  it('follows a size of sheet that has moved in the list', async () => {
    const { plan } = await mondays();
    const [small, large] = [
      '      - {size: 32 x 40, price: 9.50, count: 14}\n',
      '      - {size: 40 x 60, price: 19.50, count: 2} # kept for the map\n',
    ];
    const { shopText } = done(booked(plan, MONDAY_SHOP.replace(small + large, large + small)));
    const count = (text: string) =>
      done(readShop(shopIs(text)))
        .boards.get('bone-4')!
        .sheets.map((each) => each.count);
    expect(count(shopText)).toEqual([...count(done(booked(plan, MONDAY_SHOP)).shopText)].reverse());
  });

  it('exchanges a mark that another offcut has got since, and says so', async () => {
    const { plan } = await mondays();
    const [first] = plan.change.kept;
    const more = MONDAY_SHOP.replace('  - {id: S4', `  - {id: ${first!.id}, board: plain-2, size: 9 x 9}\n  - {id: S4`);
    const made = booked(plan, more);
    expect(codes(made)).toEqual(['booking-mark-taken']);
    const marks = done(made).change.kept.map(({ id }) => id);
    expect(new Set(marks).size).toBe(plan.change.kept.length);
    expect(marks).not.toContain(first!.id);
  });
});

describe('the journal of plans', () => {
  it('books a plan once, and takes it back as it was', async () => {
    const { plan } = await mondays();
    const noted = done(notePlan(undefined, plan, DAY));
    expect(done(notePlan(plansAre(noted), plan, '2026-03-03'))).toBe(noted);
    const cut = (shop: string, plans: string) => cutPlan(shopIs(shop), plansAre(plans), plan.number, DAY);
    const one: BookedPlan = done(cut(MONDAY_SHOP, noted));
    expect(one.shopText).toBe(done(booked(plan, MONDAY_SHOP)).shopText);
    expect(codes(cut(one.shopText, one.plansText))).toEqual(['plan-booked']);
    const back = done(undoPlan(shopIs(one.shopText), plansAre(one.plansText)));
    const sorted = (text: string) => {
      const { shelf, boards } = done(readShop(shopIs(text)));
      return { boards, shelf: [...shelf].sort((a, b) => (a.id < b.id ? -1 : 1)) };
    };
    expect(sorted(back.shopText)).toEqual(sorted(MONDAY_SHOP));
    expect(codes(undoPlan(shopIs(back.shopText), plansAre(back.plansText)))).toEqual(['plan-not-booked']);
    expect(codes(undoPlan(shopIs(back.shopText), plansAre(back.plansText), plan.number))).toEqual(['plan-not-booked']);
    expect(cut(back.shopText, back.plansText).ok).toBe(true);
  });

  it('takes back only what nothing has become of', async () => {
    const { plan } = await mondays();
    const one = done(cutPlan(shopIs(MONDAY_SHOP), plansAre(done(notePlan(undefined, plan, DAY))), plan.number, DAY));
    const back = (shop: string) => codes(undoPlan(shopIs(shop), plansAre(one.plansText)));
    const [kept] = plan.change.kept;
    expect(back(one.shopText.replace(`id: ${kept!.id},`, 'id: S99,'))).toEqual(['booking-gone-on']);
    const [used] = plan.change.used;
    expect(back(one.shopText)).toEqual([]);
    const twin = `  - {id: ${used!.id}, board: plain-2, size: 9 x 9}\nstock:`;
    expect(back(one.shopText.replace('stock:', twin))).toEqual(['booking-gone-on']);
  });

  it('knows numbers however they are typed, and only its own', async () => {
    const { plan } = await mondays();
    const noted = done(notePlan(undefined, plan, DAY));
    for (const typed of [
      plan.number.replace('-', ''),
      ` ${plan.number.replace('-', ' ')} `,
      plan.number.replace('-', '–'),
    ])
      expect(cutPlan(shopIs(MONDAY_SHOP), plansAre(noted), typed, DAY).ok).toBe(true);
    for (const typed of ['', '1', '0000-0000', `${plan.number}0`])
      expect(codes(cutPlan(shopIs(MONDAY_SHOP), plansAre(noted), typed, DAY))).toEqual(['plan-unknown']);
    expect(codes(cutPlan(shopIs(MONDAY_SHOP), undefined, plan.number, DAY))).toEqual(['plan-unknown']);
  });

  it('keeps the last hundred, and no more than can be read again', async () => {
    const { plan } = await mondays();
    let text = done(notePlan(undefined, plan, DAY));
    for (let i = 0; i < 120; i++)
      text = done(notePlan(plansAre(text), { ...plan, number: `0000-${String(i).padStart(4, '0')}` }, DAY));
    expect(text).not.toContain('0000-0019');
    expect(text).toContain('0000-0020');
    const long = { ...plan, jobs: Array.from({ length: 9000 }, () => 'A title of some length') };
    for (let i = 0; i < 40; i++)
      text = done(notePlan(plansAre(text), { ...long, number: `1111-${String(i).padStart(4, '0')}` }, DAY));
    expect(text.length).toBeLessThan(2_000_001);
    expect(text).toContain('1111-0039');
    for (const torn of ['{', '[]', text.replace('"made":', '"mad":')])
      expect(codes(notePlan(plansAre(torn), plan, DAY))).toEqual(['plans-unreadable']);
  });
});
