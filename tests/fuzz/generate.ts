import { readdirSync, readFileSync } from 'node:fs';
import { structuredJob } from './structured.ts';
import { KEYS, LENGTHS, SHAPES, SIZES, WORDS } from './words.ts';

/** Random numbers from a seed (mulberry32), the same on every machine. */
export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export type Random = () => number;

const pick = <T>(next: Random, from: readonly T[]): T => from[Math.floor(next() * from.length)]!;

/** A value of no particular sense, in flow style. */
function anything(next: Random, depth: number): string {
  const roll = next();
  if (depth > 0 && roll < 0.12)
    return `{${Array.from({ length: Math.floor(next() * 4) }, () => `${pick(next, KEYS)}: ${anything(next, depth - 1)}`).join(', ')}}`;
  if (depth > 0 && roll < 0.2)
    return `[${Array.from({ length: Math.floor(next() * 4) }, () => anything(next, depth - 1)).join(', ')}]`;
  return roll < 0.5 ? pick(next, LENGTHS) : roll < 0.8 ? pick(next, SIZES) : pick(next, WORDS);
}

/** Mostly what belongs there, now and then something else. */
const mostly = (next: Random, odd: boolean, right: string): string =>
  odd && next() < 0.03 ? anything(next, 2) : right;

const length = (next: Random, odd: boolean): string =>
  !odd || next() < 0.9 ? pick(next, ['1/4', '3/8', '1/2', '1', '2 3/4', '3', '12 mm', '70 mm']) : pick(next, LENGTHS);
const size = (next: Random, odd: boolean): string =>
  !odd || next() < 0.92
    ? pick(next, ['16 x 20', '11 x 14', '8 x 10', '10 1/2 x 13 1/2', '[9, 12]', '300 x 400 mm', '20 x 16'])
    : pick(next, SIZES);

function sides(next: Random, odd: boolean): string {
  if (next() < 0.5) return length(next, odd);
  const given = (odd ? ['top', 'bottom', 'left', 'right', 'sides'] : ['top', 'bottom', 'sides']).filter(
    () => next() < 0.4,
  );
  return `{${given.map((side) => `${side}: ${length(next, odd)}`).join(', ')}}`;
}

const OUTERS = ['16 x 20 in', '20 x 24 in', '400 x 500 mm', '24 x 18 in'];
const WORKS = ['8 x 10 in', '10 1/2 x 13 1/2 in', '150 x 220 mm', '5 x 7 in', '9 x 9 in'];

/** What came off the cutter: near a usual size, or nothing like it. */
function asCut(next: Random, odd: boolean): string {
  const near = (): string =>
    next() < 0.7 ? pick(next, ['16 1/32 x 20', '15 31/32 x 20 1/16', '11 1/16 x 14', '301 x 400 mm']) : size(next, odd);
  const parts: string[] = [];
  if (next() < 0.6) parts.push(`outer: ${near()}`);
  if (next() < 0.3) parts.push(`layers: [{}, {blank: ${near()}}]`);
  if (next() < 0.6) {
    const border = next() < 0.3 ? `, border: ${sides(next, odd)}` : '';
    parts.push(
      `openings: [{layer: ${pick(next, odd ? ['1', '2', '3', '0'] : ['1', '2'])}, size: ${size(next, odd)}${border}}]`,
    );
  }
  return `{${parts.join(', ')}}`;
}

/** A groove or an ink line, now and then along some sides. */
function decorated(next: Random, odd: boolean): string {
  const along = pick(next, [
    '',
    ', sides: [top]',
    ', sides: [left, bottom]',
    ...(odd ? [', sides: []', ', width: 3'] : []),
  ]);
  return `kind: ${pick(next, ['groove', 'ink'])}, distance: ${length(next, odd)}${along}`;
}

/** A text in windows, of letters that are seldom cut too. */
function lettered(next: Random, odd: boolean): string {
  const text = pick(next, ['TIDES', 'Heron & egg', 'B8a@e', '"Ø Åß"', ...(odd ? ['"鷺"', '" "', '®'] : [])]);
  const more = pick(next, ['', ', edge: bevel', ', bridge: 1/4', ', islands: refuse', ', place: {bottom: 1}']);
  return `text: ${text}, height: ${pick(next, ['1/2', '1', '12 mm', '2'])}${more}`;
}

/** A job that follows the format loosely: keys come and go, values are now and then wrong. */
function grammarJob(next: Random): string {
  // Half of them hold nothing that is wrong by itself.
  const odd = next() < 0.5;
  const mat: string[] = [];
  const outer = next() < 0.7;
  if (outer) mat.push(`outer: ${mostly(next, odd, odd ? size(next, odd) : pick(next, OUTERS))}`);
  if (next() < 0.15)
    mat.push(`frame: {${pick(next, ['inside', 'nominal'])}: ${size(next, odd)}, lip: ${length(next, odd)}}`);
  if (next() < (outer ? 0.2 : 0.9)) mat.push(`border: ${mostly(next, odd, sides(next, odd))}`);
  if (next() < 0.4)
    mat.push(
      `weighting: ${mostly(next, odd, pick(next, ['none', 'diagonal', '{add: 1/2}', '{ratio: 4/3}', ...(odd ? ['{ratio: 0}', '{add: -9}'] : [])]))}`,
    );
  if (next() < 0.7) {
    const layers = Array.from({ length: 1 + Math.floor(next() * 3) }, (_, i) => {
      const parts = [
        `board: ${mostly(next, odd, `{thickness: ${pick(next, odd ? ['1.4 mm', '0.055 in', '40 mm'] : ['1.4 mm', '3 mm', '0.055 in'])}}`)}`,
      ];
      if (i > 0 && next() < 0.8) parts.push(`reveal: ${mostly(next, odd, length(next, odd))}`);
      if (next() < 0.3)
        parts.push(
          `bevel: ${mostly(next, odd, pick(next, ['45', '60', '90', '{angle: 45, reverse: true}', ...(odd ? ['1'] : [])]))}`,
        );
      if (next() < 0.2) parts.push(`trimBack: ${length(next, odd)}`);
      return `{${parts.join(', ')}}`;
    });
    mat.push(`layers: [${layers.join(', ')}]`);
  }
  const openings = Array.from({ length: next() < 0.75 ? 1 : (odd ? 0 : 1) + Math.floor(next() * 4) }, () => {
    const parts: string[] = [];
    if (next() < 0.3) parts.push(`shape: ${mostly(next, odd, pick(next, SHAPES))}`);
    const art = next() < 0.75;
    if (art) parts.push(`artwork: ${mostly(next, odd, odd ? size(next, odd) : pick(next, WORKS))}`);
    if (next() < (art ? 0.05 : 0.95))
      parts.push(`size: ${mostly(next, odd, odd ? size(next, odd) : pick(next, WORKS))}`);
    if ((art || odd) && next() < 0.5)
      parts.push(`${pick(next, ['overlap', 'float'])}: ${mostly(next, odd, sides(next, odd))}`);
    if (next() < 0.15) parts.push(`lines: [{${mostly(next, odd, decorated(next, odd))}}]`);
    if (next() < 0.2) parts.push(`measure: ${pick(next, odd ? ['face', 'sight', 'back'] : ['face', 'sight'])}`);
    return `{${parts.join(', ')}}`;
  });
  const rest: string[] = [];
  if (next() < 0.15) rest.push(`asCut: ${mostly(next, odd, asCut(next, odd))}`);
  if (next() < 0.15) rest.push(`lettering: [{${mostly(next, odd, lettered(next, odd))}}]`);
  if (next() < 0.2)
    rest.push(`arrange: {${pick(next, ['rows: 2', 'columns: 2', 'gap: 1/2', 'fill: true', 'rows: [1, 2]'])}}`);
  if (next() < 0.3) rest.push(`units: ${mostly(next, odd, pick(next, ['in', 'mm', 'cm']))}`);
  if (next() < 0.3)
    rest.push(
      `title: ${mostly(next, odd, pick(next, odd ? ['Heron', '"a\\u0007"', '"鷺"', '"\\u202e abc"'] : ['Heron', '"鷺"']))}`,
    );
  if (next() < 0.3)
    rest.push(
      `bench: {snap: ${pick(next, odd ? ['true', 'false', '1'] : ['true', 'false'])}, stack: ${pick(next, ['together', 'apart'])}}`,
    );
  if (next() < 0.3)
    rest.push(
      `print: {paper: ${mostly(next, odd, pick(next, ['letter', 'a4', 'fit', 'roll:36in']))}, lap: ${length(next, odd)}}`,
    );
  return [
    `mat: ${mostly(next, odd, `{${mat.join(', ')}}`)}`,
    `openings: ${mostly(next, odd, `[${openings.join(', ')}]`)}`,
    ...rest,
  ].join('\n');
}

const NOISE = [
  '\t',
  '\n',
  ' ',
  ':',
  '-',
  '{',
  '}',
  '[',
  ']',
  ',',
  '"',
  "'",
  '#',
  '&a',
  '*a',
  '!',
  '|',
  '>',
  '%',
  '@',
  '\u0000',
  '\ufeff',
  '9',
  '1/2',
  ' x ',
  'é',
  '😀',
  '---',
  '<<',
  '?',
];

/** A text with a few places changed, taken out, doubled or shuffled. */
function mutated(text: string, next: Random): string {
  let now = text;
  for (let i = 0; i <= next() * 4; i++) {
    const at = Math.floor(next() * now.length);
    const span = 1 + Math.floor(next() * next() * 30);
    const roll = next();
    if (roll < 0.3) now = now.slice(0, at) + pick(next, NOISE) + now.slice(at + (roll < 0.15 ? 1 : 0));
    else if (roll < 0.55) now = now.slice(0, at) + now.slice(at + span);
    else if (roll < 0.75)
      now = now.slice(0, at) + now.slice(at, at + span).repeat(1 + Math.floor(next() * 3)) + now.slice(at);
    else {
      const to = Math.floor(next() * now.length);
      now = now.slice(0, at) + now.slice(to, to + span) + now.slice(at);
    }
  }
  return now;
}

const SEEDS: readonly string[] = [
  'examples/heron/job.yaml',
  ...readdirSync('templates')
    .filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
    .map((name) => `templates/${name}`),
].map((name) => readFileSync(name, 'utf8'));

/** Without a shop's boards, so that jobs solve by themselves. */
const OWN = 'units: mm\nmat: {outer: 400 x 500, layers: [{}, {reveal: 6}]}\nopenings: [{size: 200 x 250}]\n';

/** One of every kind: after the format, after a template with places of its text changed, or with parts of it changed. */
export function anyJob(next: Random): string {
  const roll = next();
  if (roll < 0.15) return grammarJob(next);
  if (roll < 0.3) return mutated(pick(next, SEEDS), next);
  return structuredJob(next() < 0.5 ? OWN : pick(next, SEEDS), next);
}
