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

const LENGTHS = [
  '1/4',
  '3',
  '2 3/4',
  '5/8"',
  '41.9 cm',
  '12 mm',
  '0',
  '-1',
  '1/0',
  '1,5',
  '.inf',
  '.nan',
  'null',
  'true',
  '1e9',
  '½',
  '3′',
  '""',
  '[1]',
  '{a: 1}',
  '7 in',
  '0.0001',
  '99999',
];
const SIZES = [
  '16 x 20',
  '10 1/2 x 13 1/2',
  '[16, 20]',
  '400 x 500 mm',
  '8 × 10 in',
  '16',
  '16 x',
  'x',
  '1 x 1',
  '0 x 5',
  '5000 mm x 10 mm',
  '32 x 40',
  '[1]',
  '[a, b]',
  '20 x 16',
  '6 x 400',
];
const WORDS = [
  'none',
  'diagonal',
  'together',
  'apart',
  'letter',
  'a4',
  'rectangle',
  'oval',
  'circle',
  'face',
  'sight',
  'prick',
  'cut-through',
  'in',
  'mm',
  'cm',
  'left',
  'bone',
  'x',
];
const KEYS = [
  'outer',
  'frame',
  'border',
  'weighting',
  'layers',
  'board',
  'bevel',
  'reveal',
  'trimBack',
  'artwork',
  'size',
  'overlap',
  'float',
  'measure',
  'shape',
  'top',
  'bottom',
  'left',
  'right',
  'sides',
  'inside',
  'nominal',
  'lip',
  'clearance',
  'add',
  'ratio',
  'angle',
  'reverse',
  'thickness',
  '__proto__',
  'constructor',
  'toString',
  'a b',
  '',
];

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
const mostly = (next: Random, right: string): string => (next() < 0.96 ? right : anything(next, 2));

const length = (next: Random): string =>
  next() < 0.9 ? pick(next, ['1/4', '3/8', '1/2', '1', '2 3/4', '3', '12 mm', '70 mm']) : pick(next, LENGTHS);
const size = (next: Random): string =>
  next() < 0.92
    ? pick(next, ['16 x 20', '11 x 14', '8 x 10', '10 1/2 x 13 1/2', '[9, 12]', '300 x 400 mm', '20 x 16'])
    : pick(next, SIZES);

function sides(next: Random): string {
  if (next() < 0.5) return length(next);
  const given = ['top', 'bottom', 'left', 'right', 'sides'].filter(() => next() < 0.4);
  return `{${given.map((side) => `${side}: ${length(next)}`).join(', ')}}`;
}

/** A job that follows the format loosely: keys come and go, values are now and then wrong. */
export function grammarJob(next: Random): string {
  const mat: string[] = [];
  if (next() < 0.6) mat.push(`outer: ${mostly(next, size(next))}`);
  if (next() < 0.15) mat.push(`frame: {${pick(next, ['inside', 'nominal'])}: ${size(next)}, lip: ${length(next)}}`);
  if (next() < 0.4) mat.push(`border: ${mostly(next, sides(next))}`);
  if (next() < 0.4)
    mat.push(
      `weighting: ${mostly(next, pick(next, ['none', 'diagonal', '{add: 1/2}', '{ratio: 4/3}', '{ratio: 0}', '{add: -9}']))}`,
    );
  if (next() < 0.7) {
    const layers = Array.from({ length: 1 + Math.floor(next() * 3) }, (_, i) => {
      const parts = [`board: ${mostly(next, `{thickness: ${pick(next, ['1.4 mm', '3 mm', '0.055', '40 mm'])}}`)}`];
      if (i > 0 && next() < 0.8) parts.push(`reveal: ${mostly(next, length(next))}`);
      if (next() < 0.3)
        parts.push(`bevel: ${mostly(next, pick(next, ['45', '60', '90', '{angle: 45, reverse: true}', '1']))}`);
      if (next() < 0.2) parts.push(`trimBack: ${length(next)}`);
      return `{${parts.join(', ')}}`;
    });
    mat.push(`layers: [${layers.join(', ')}]`);
  }
  const openings = Array.from({ length: next() < 0.85 ? 1 : Math.floor(next() * 4) }, () => {
    const parts: string[] = [];
    if (next() < 0.3) parts.push(`shape: ${mostly(next, pick(next, ['rectangle', 'oval', 'circle']))}`);
    if (next() < 0.75) parts.push(`artwork: ${mostly(next, size(next))}`);
    if (next() < 0.2) parts.push(`size: ${mostly(next, size(next))}`);
    if (next() < 0.5) parts.push(`${pick(next, ['overlap', 'float'])}: ${mostly(next, sides(next))}`);
    if (next() < 0.2) parts.push(`measure: ${pick(next, ['face', 'sight', 'back'])}`);
    return `{${parts.join(', ')}}`;
  });
  const rest: string[] = [];
  if (next() < 0.3) rest.push(`units: ${mostly(next, pick(next, ['in', 'mm', 'cm']))}`);
  if (next() < 0.3) rest.push(`title: ${mostly(next, pick(next, ['Heron', '"a\\u0007"', '"鷺"', '"\\u202e abc"']))}`);
  if (next() < 0.3)
    rest.push(`bench: {snap: ${pick(next, ['true', 'false', '1'])}, stack: ${pick(next, ['together', 'apart'])}}`);
  if (next() < 0.3)
    rest.push(
      `print: {paper: ${mostly(next, pick(next, ['letter', 'a4', 'fit', 'roll:36in']))}, lap: ${length(next)}}`,
    );
  return [
    `mat: ${mostly(next, `{${mat.join(', ')}}`)}`,
    `openings: ${mostly(next, `[${openings.join(', ')}]`)}`,
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
export function mutated(text: string, next: Random): string {
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
