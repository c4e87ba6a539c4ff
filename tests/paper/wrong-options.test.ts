import { describe, expect, it } from 'vitest';
import type { FullScale } from '../../src/drawing/full-scale.ts';
import type { Drawing } from '../../src/drawing/model.ts';
import { layOut } from '../../src/paper/layout.ts';
import type { LayoutOptions } from '../../src/paper/options.ts';
import { even, options } from './laid.ts';
import { LARGE, MIDDLING } from './sample.ts';

const withGroups = (work: FullScale, groups: Drawing['groups']): FullScale => ({
  ...work,
  drawing: { ...work.drawing, groups },
});
const blank = withGroups(
  MIDDLING,
  MIDDLING.drawing.groups.map((group) => ({ ...group, shown: false })),
);
const { board: _, ...boardless } = MIDDLING;
const printer = (x: number, y: number) => ({ printer: { id: 'office', x, y, calibrated: true, margin: even(0) } });

const WRONG: readonly (readonly [string, FullScale, string, Partial<LayoutOptions>, string, RegExp, RegExp])[] = [
  [
    'a margin below nought',
    MIDDLING,
    'letter',
    { margin: { ...even(5), left: -1 } },
    'margin-negative',
    /left margin is -0\.0394 in/,
    /default/,
  ],
  [
    'a margin that is no number',
    MIDDLING,
    'letter',
    { margin: { ...even(5), top: Number.NaN } },
    'margin-negative',
    /top margin/,
    /default/,
  ],
  [
    'margins wider than the paper',
    MIDDLING,
    'letter',
    { margin: even(110) },
    'margins-too-wide',
    /8 1\/2 × 11 in paper/,
    /larger paper/,
  ],
  [
    'margins that leave a strip',
    MIDDLING,
    '60 x 90 mm',
    { margin: even(15) },
    'margins-too-wide',
    /leave less than/,
    /larger paper/,
  ],
  [
    "a printer's margins that leave a strip",
    MIDDLING,
    'letter',
    { printer: { id: 'label', x: 1, y: 1, calibrated: true, margin: { ...even(0), left: 190 } } },
    'margins-too-wide',
    /leave less than/,
    /larger paper/,
  ],
  [
    'margins wider than the roll',
    MIDDLING,
    'roll:4in',
    { margin: even(40) },
    'margins-too-wide',
    /4 in paper/,
    /larger paper/,
  ],
  ['no lap to join by', MIDDLING, 'letter', { lap: 0 }, 'lap-too-narrow', /lap of 0 in/, /join: butt/],
  ['a lap below nought', MIDDLING, 'letter', { lap: -12 }, 'lap-too-narrow', /at least/, /join: butt/],
  ['a lap that is no number', MIDDLING, 'letter', { lap: Number.NaN }, 'lap-too-narrow', /at least/, /join: butt/],
  [
    'a lap of more than half a sheet',
    MIDDLING,
    'letter',
    { lap: 110 },
    'lap-too-wide',
    /more than half of what a sheet shows, 8 in/,
    /or less/,
  ],
  [
    'a printer said to be far off',
    MIDDLING,
    'letter',
    printer(2, 1),
    'printer-scale',
    /print 2 of the nominal length in x/,
    /99\.5 mm instead of 100/,
  ],
  ['a printer that prints nothing', MIDDLING, 'letter', printer(1, 0), 'printer-scale', /in y/, /divided by/],
  [
    'corner sheets without a board',
    boardless,
    'letter',
    { extent: 'corners' },
    'corners-without-board',
    /has none/,
    /whole/,
  ],
  ['nothing drawn', blank, 'letter', {}, 'nothing-drawn', /nothing to print/, /show/],
  [
    'sheets without end',
    withGroups(LARGE, [
      {
        name: 'g',
        label: '',
        shown: true,
        items: [
          {
            kind: 'path',
            fill: 0.5,
            paths: [
              {
                start: { x: 0, y: 0 },
                segments: [
                  { kind: 'line', to: { x: 5000, y: 0 } },
                  { kind: 'line', to: { x: 5000, y: 5000 } },
                  { kind: 'line', to: { x: 0, y: 0 } },
                ],
                closed: true,
              },
            ],
          },
        ],
      },
    ]),
    '60 x 60 mm',
    { margin: even(5), lap: 6 },
    'too-many-sheets',
    /more than 2000 sheets/,
    /larger paper/,
  ],
];

describe('what is refused before anything is laid out', () => {
  it.each(WRONG)('%s', (_name, work, paper, more, code, message, hint) => {
    const made = layOut(work, options(paper, { ...more, path: ['print'] }));
    if (made.ok) throw new Error('it was accepted');
    expect(made.problems.map((problem) => problem.code)).toContain(code);
    const problem = made.problems.find((one) => one.code === code)!;
    expect(problem.path[0]).toBe('print');
    expect(problem.message).toMatch(message);
    expect(problem.hint).toMatch(hint);
    expect(problem.message.endsWith('.')).toBe(false);
  });

  it('everything at once', () => {
    const made = layOut(
      boardless,
      options('letter', { lap: 1, margin: even(-1), extent: 'corners', ...printer(9, 9) }),
    );
    expect(made.ok ? [] : made.problems.map(({ code }) => code)).toEqual([
      'margin-negative',
      'margin-negative',
      'margin-negative',
      'margin-negative',
      'lap-too-narrow',
      'printer-scale',
      'printer-scale',
      'corners-without-board',
    ]);
  });

  it('lengths are told in the unit of the job', () => {
    const made = layOut(MIDDLING, options('letter', { lap: 2, units: 'mm' }));
    expect(made.ok ? '' : made.problems[0]!.message).toContain('lap of 2 mm');
  });
});

it('a drawing full of words is said to be crowded, and printed all the same', () => {
  const words = Array.from({ length: 60 }, (_, i) => ({
    kind: 'text' as const,
    text: 'there is no room here for anything else at all, whatever it may be, not a thing',
    at: { x: 2, y: 5 + 5 * i },
    anchor: 'start' as const,
    size: 6,
    weight: 'regular' as const,
    turn: 0,
    colour: 0,
  }));
  const groups = [{ name: 'words', label: '', shown: true, items: words }];
  const full: FullScale = {
    ...MIDDLING,
    avoid: [],
    drawing: { ...MIDDLING.drawing, width: 190, height: 300, groups },
  };
  const made = layOut(full, options('a4', { margin: even(0) }));
  expect(made.ok && made.warnings.map(({ code }) => code)).toEqual(['sheet-crowded']);
});

it('what many sheets have no room for is told once, with the first of them', () => {
  const made = layOut(MIDDLING, options('50 x 50 mm', { margin: even(4), lap: 6 }));
  const message = made.ok ? made.warnings[0]!.message : '';
  expect(message).toMatch(/its name \(\w+, \w+, \w+, \w+ and \d+ more\)/);
  expect(message.match(/its name/g)).toHaveLength(1);
});
