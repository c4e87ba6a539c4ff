import { describe, expect, it } from 'vitest';
import { jobOf, read, refused } from './texts.ts';

const all = (mm: number) => ({ top: mm, right: mm, bottom: mm, left: mm });
const near = (mm: number) => expect.closeTo(mm, 9);

describe('every key of a job', () => {
  const mat = (text: string) => jobOf(`mat: ${text}\nopenings: [{}]\n`).mat;
  const opening = (text: string) => jobOf(`openings: [${text}]\n`).openings[0]!;
  const bench = (text: string, shop?: string) => jobOf(`openings: [{}]\nbench: ${text}\n`, shop).bench;
  const print = (text: string, shop?: string) => jobOf(`openings: [{}]\nprint: ${text}\n`, shop).print;

  it('units hold for bare numbers, a text may carry its own', () => {
    const job = jobOf('units: cm\nmat: {outer: 40 x 50, border: 3 in}\nopenings: [{size: [20, "300 mm"]}]\n');
    expect(job.units).toBe('cm');
    expect(job.mat.outer).toStrictEqual({ width: 400, height: 500 });
    expect(job.mat.border).toStrictEqual({ ...all(near(76.2)), written: 'once' });
    expect(job.openings[0]!.size).toStrictEqual({ width: 200, height: 300 });
  });

  it('mat.frame: inside or nominal, clearance, lip and what lies in the rebate', () => {
    expect(mat('{frame: {inside: 16 x 20, clearance: 1/8, lip: 1/4}}').frame).toStrictEqual({
      inside: { width: near(406.4), height: near(508) },
      clearance: near(3.175),
      lip: near(6.35),
    });
    expect(
      mat(
        '{frame: {nominal: 16 x 20, depth: 3/4, glazing: {thickness: 2 mm, name: Glass}, spacer: 0, art: 0.5 mm, backing: {thickness: 5 mm}}}',
      ).frame,
    ).toStrictEqual({
      nominal: { width: near(406.4), height: near(508) },
      clearance: near(3.175),
      lip: 0,
      depth: near(19.05),
      glazing: { id: 'Glass', name: 'Glass', thickness: 2 },
      spacer: 0,
      art: 0.5,
      backing: { id: 'backing', name: 'backing', thickness: 5 },
    });
  });

  it('mat.border: one length, or by side', () => {
    expect(mat('{border: 3}').border).toStrictEqual({ ...all(near(76.2)), written: 'once' });
    expect(mat('{border: {top: 3, bottom: 3 1/2, sides: 2 3/4}}').border).toStrictEqual({
      top: near(76.2),
      bottom: near(88.9),
      left: near(69.85),
      right: near(69.85),
      written: 'pair',
    });
    expect(mat('{border: {left: 2, right: 3}}').border).toStrictEqual({ left: near(50.8), right: near(76.2) });
    expect(mat('{border: {}}').border).toStrictEqual({});
  });

  it('mat.weighting in its four forms', () => {
    expect(mat('{weighting: none}').weighting).toStrictEqual({ kind: 'none' });
    expect(mat('{weighting: diagonal}').weighting).toStrictEqual({ kind: 'diagonal' });
    expect(mat('{weighting: {add: 0}}').weighting).toStrictEqual({ kind: 'add', length: 0 });
    expect(mat('{weighting: {ratio: 4/3}}').weighting).toStrictEqual({ kind: 'ratio', ratio: near(4 / 3) });
    expect(mat('{weighting: {ratio: "4:3"}}').weighting).toStrictEqual({ kind: 'ratio', ratio: near(4 / 3) });
    expect(mat('{weighting: {ratio: 1.25}}').weighting).toStrictEqual({ kind: 'ratio', ratio: 1.25 });
  });

  it('mat.layers: bevels and boards in place', () => {
    const bevel = (text: string) => mat(`{layers: [{bevel: ${text}}]}`).layers[0]!.bevel;
    expect(bevel('60')).toStrictEqual({ angle: 60, reverse: false });
    expect(bevel('90')).toStrictEqual({ angle: 90, reverse: false });
    expect(bevel('{angle: 45, reverse: true}')).toStrictEqual({ angle: 45, reverse: true });
    expect(bevel('{reverse: true}')).toStrictEqual({ angle: 45, reverse: true });
    const board = mat('{layers: [{board: {thickness: 0.06, colour: "#ABC", name: Chalk, plies: 4, core: cream}}]}');
    expect(board.layers[0]!.board).toStrictEqual({
      id: 'Chalk',
      name: 'Chalk',
      thickness: near(1.524),
      plies: 4,
      colour: '#aabbcc',
      core: 'cream',
      sheets: [],
      directional: false,
    });
    expect(mat('{layers: [{}, {board: {thickness: 1 mm}}]}').layers[1]!.board).toMatchObject({ id: 'board 2' });
  });

  it('openings: artwork, size, overlap, float, measure, name', () => {
    expect(opening('{name: Heron, size: 10 x 13, measure: sight}')).toStrictEqual({
      name: 'Heron',
      shape: 'rectangle',
      size: { width: near(254), height: near(330.2) },
      overlap: {},
      measure: 'sight',
    });
    expect(opening('{artwork: 10 x 13, float: 1/4}')).toStrictEqual({
      shape: 'rectangle',
      artwork: { width: near(254), height: near(330.2) },
      overlap: {},
      float: { ...all(near(6.35)), written: 'once' },
      measure: 'sight',
    });
    expect(opening('{artwork: 10 x 13, float: {bottom: 1/2}, measure: face}')).toMatchObject({
      float: { bottom: near(12.7) },
      measure: 'face',
    });
    const both = opening('{artwork: 10 x 13, size: 9 1/2 x 12 1/2, overlap: {sides: 1/8, top: 1/4}}');
    expect(both.overlap).toStrictEqual({ left: near(3.175), right: near(3.175), top: near(6.35), written: 'pair' });
  });

  it('bench: graduation from the guide, stack, snap, hinge', () => {
    expect(bench('{graduation: 1/8, snap: true, stack: apart, hinge: top}')).toMatchObject({
      graduation: near(3.175),
      snap: true,
      stack: 'apart',
      hinge: 'top',
    });
    expect(bench('{}', 'guide: {graduation: 1/32}').graduation).toBeCloseTo(0.79375, 9);
    expect('hinge' in bench('{}')).toBe(false);
  });

  it('print: every key', () => {
    expect(
      print('{paper: A3, margin: {top: 1/2}, lap: 0, join: butt, transfer: cut-through, paperThickness: 0.2 mm}'),
    ).toStrictEqual({
      paper: 'A3',
      margin: { ...all(near(6.35)), top: near(12.7) },
      lap: 0,
      join: 'butt',
      transfer: 'cut-through',
      paperThickness: 0.2,
    });
    const shop = 'printers: {office: {x: 0.99, margin: {top: 1/2, sides: 1/8}}}\npapers: {banner: {size: 13 x 40}}';
    expect(print('{paper: banner, printer: office}', shop)).toMatchObject({
      paper: 'banner',
      margin: all(near(6.35)),
      printer: {
        id: 'office',
        x: 0.99,
        y: 1,
        calibrated: false,
        margin: { top: near(12.7), right: near(3.175), bottom: 0 },
      },
    });
  });

  it('print.printer: none', () => {
    const shop = 'printers: {office: {x: 0.99, margin: 1}}';
    expect(print('{printer: none, margin: 1/8}', shop)).toMatchObject({ printer: 'none', margin: all(near(3.175)) });
  });

  it.each(['letter', 'a4', 'fit', 'roll:24in', '13 x 19', '300 x 450 mm', 'ARCH C'])('print.paper: %s', (paper) => {
    expect(print(`{paper: "${paper}"}`).paper).toBe(paper);
  });

  it('due: a day of the calendar, as written', () => {
    expect(jobOf('due: 2031-03-12\nopenings: [{}]\n').due).toBe('2031-03-12');
    expect(jobOf('due: "2032-02-29"\nopenings: [{}]\n').due).toBe('2032-02-29');
    expect(jobOf('openings: [{}]\n').due).toBeUndefined();
    for (const wrong of [
      '2031-02-29',
      '2100-02-29',
      '2031-04-31',
      '2031-13-01',
      '2031-01-00',
      '1899-12-31',
      '0031-01-01',
    ])
      expect(refused(read(`due: ${wrong}\nopenings: [{}]\n`))).toMatchObject([{ code: 'day-unreadable' }]);
  });

  it('count and customer', () => {
    const job = jobOf('count: 40\ncustomer: " Saltmarsh "\nopenings: [{}]\n');
    expect(job).toMatchObject({ count: 40, customer: 'Saltmarsh' });
  });
});
