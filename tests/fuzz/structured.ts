import { parse } from 'yaml';
import type { Random } from './generate.ts';
import { KEYS, LENGTHS, SIZES, WORDS } from './words.ts';

/** Plain data of a job; order and kinds are those of the format, values are anything. */
type Tree = null | boolean | number | string | Tree[] | { [key: string]: Tree };

const pick = <T>(next: Random, from: readonly T[]): T => from[Math.floor(next() * from.length)]!;

const EXTREME: readonly Tree[] = [
  0,
  -1,
  1e-9,
  0.01,
  1e6,
  1e300,
  '0 mm',
  '0.001 mm',
  '1/64',
  '2 mm',
  '6 mm',
  '199 in',
  '5080 mm',
  '1e-7 in',
  '1/1000000 in',
  '99999999999 mm',
];

const point = (next: Random, size: number): string =>
  `${(next() * size).toFixed(pick(next, [0, 1, 3]))},${(next() * size).toFixed(pick(next, [0, 1, 3]))}`;

/** Corners round a middle, or anywhere; hairpins, edges of no length and lines that cross among them. */
function corners(next: Random): string {
  const count = 3 + Math.floor(next() * next() * 40);
  if (next() < 0.3) return Array.from({ length: count }, () => point(next, 200)).join(' ');
  const sharp = next();
  const list = Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * (i + 0.9 * sharp * (next() - 0.5))) / count;
    const far = 100 * (1 - sharp * next());
    return `${(100 + far * Math.cos(angle)).toFixed(2)},${(100 + far * Math.sin(angle)).toFixed(2)}`;
  });
  if (next() < 0.2) list.splice(Math.floor(next() * list.length), 0, pick(next, list));
  return list.join(' ');
}

function pathData(next: Random): string {
  const spaced = (text: string): string => text.replace(',', ' ');
  const parts = [`M${spaced(point(next, 200))}`];
  for (let i = 0; i < 1 + next() * 12; i++) {
    const to = spaced(point(next, 200));
    const near = (): string => spaced(point(next, next() < 0.1 ? 2000 : 200));
    parts.push(
      pick(next, [
        `L${to}`,
        `H${(200 * next()).toFixed(1)}`,
        `V${(200 * next()).toFixed(1)}`,
        `C${near()} ${near()} ${to}`,
        `Q${near()} ${to}`,
        `S${near()} ${to}`,
        `A${pick(next, ['0', '1', '20', '300'])} ${pick(next, ['20', '45'])} 0 ${pick(next, ['0', '1'])} ${pick(next, ['0', '1'])} ${to}`,
        `l${spaced(point(next, 40))}`,
      ]),
    );
  }
  if (next() < 0.9) parts.push('Z');
  return parts.join(' ');
}

const length = (next: Random): Tree => (next() < 0.7 ? pick(next, LENGTHS) : pick(next, EXTREME));
const size = (next: Random): Tree => (next() < 0.6 ? pick(next, SIZES) : [length(next), length(next)]);

const shape = (next: Random): Record<string, Tree> =>
  pick<(n: Random) => Record<string, Tree>>(next, [
    () => ({ shape: 'oval' }),
    () => ({ shape: 'circle' }),
    (n) => ({ shape: 'rounded', radius: length(n) }),
    () => ({ shape: 'round-arch' }),
    (n) => ({ shape: 'arch', rise: length(n) }),
    (n) => ({ shape: 'clipped', clip: length(n) }),
    (n) => ({ shape: 'notched', notch: length(n), steps: 1 + Math.floor(n() * 4) }),
    (n) => ({ shape: 'polygon', sides: 3 + Math.floor(n() * 10), stands: pick(n, ['side', 'corner']) }),
    (n) => ({ shape: 'outline', outline: n() < 0.5 ? corners(n) : pathData(n) }),
  ])(next);

const bevel = (next: Random): Tree =>
  pick<Tree>(next, [45, 60, 90, 30, 89.9, { angle: pick(next, [30, 45, 60, 88]), reverse: true }]);

const sides = (next: Random): Tree => {
  const names = ['top', 'bottom', 'left', 'right', 'sides'].filter(() => next() < 0.4);
  return Object.fromEntries(names.map((name) => [name, length(next)]));
};

/** Parts of a job that are right by themselves, with a length out of anywhere. */
const PARTS: readonly ((next: Random) => readonly [path: string, value: Tree])[] = [
  (n) => ['mat.outer', size(n)],
  (n) => ['mat.border', n() < 0.5 ? length(n) : sides(n)],
  (n) => ['mat.weighting', pick<Tree>(n, ['diagonal', { add: length(n) }, { ratio: pick(n, [4 / 3, 0.01, 90]) }])],
  (n) => ['mat.frame', { nominal: size(n), lip: length(n) }],
  (n) => [
    'mat.layers',
    Array.from({ length: 1 + Math.floor(n() * 4) }, () => ({
      board: { thickness: pick<Tree>(n, ['1.4 mm', '3 mm', '0.3 mm', '9 mm', length(n)]) },
      bevel: bevel(n),
      ...(n() < 0.6 ? { reveal: length(n) } : {}),
    })),
  ],
  (n) => ['asCut', { outer: size(n) }],
  (n) => ['asCut', { openings: [{ layer: 1 + Math.floor(n() * 3), size: size(n) }] }],
  (n) => ['arrange', { [pick(n, ['rows', 'columns'])]: 1 + Math.floor(n() * 3), gap: length(n), fill: n() < 0.2 }],
  (n) => [
    'bench',
    { snap: n() < 0.5, stack: pick(n, ['together', 'apart']), graduation: pick(n, ['1/16', '1 mm', '2 in']) },
  ],
  (n) => ['print', { paper: pick(n, ['letter', 'a4', 'fit']), transfer: 'cut-through', paperThickness: length(n) }],
  (n) => ['units', pick(n, ['in', 'mm', 'cm'])],
  (n) => [
    'lettering',
    [{ text: pick(n, ['TIDES', 'Ebb & Flow', '8']), height: length(n), edge: pick(n, ['bevel', 'square']) }],
  ],
];

const OPENING: readonly ((next: Random) => Record<string, Tree>)[] = [
  shape,
  shape,
  (n) => ({ size: size(n) }),
  (n) => ({ artwork: size(n), [pick(n, ['overlap', 'float'])]: n() < 0.6 ? length(n) : sides(n) }),
  (n) => ({ place: { [pick(n, ['top', 'bottom'])]: length(n), [pick(n, ['left', 'right'])]: length(n) } }),
  (n) => ({ lines: [{ kind: pick(n, ['groove', 'ink']), distance: length(n), width: length(n) }] }),
  (n) => ({ measure: pick(n, ['face', 'sight']) }),
  (n) => ({ reveals: [pick<Tree>(n, ['skip', 'same', length(n), sides(n)])] }),
];

const isMap = (tree: Tree | undefined): tree is { [key: string]: Tree } =>
  typeof tree === 'object' && tree !== null && !Array.isArray(tree);

/** Every place of a tree, as the map or list that holds it and the key in it. */
function places(tree: Tree): readonly (readonly [holder: Tree[] | { [key: string]: Tree }, key: string])[] {
  if (typeof tree !== 'object' || tree === null) return [];
  return Object.entries(tree).flatMap(([key, value]) => [[tree, key] as const, ...places(value)]);
}

const at = (holder: Tree[] | { [key: string]: Tree }, key: string): Tree =>
  Array.isArray(holder) ? holder[Number(key)]! : holder[key]!;

function put(holder: Tree[] | { [key: string]: Tree }, key: string, value: Tree): void {
  if (Array.isArray(holder)) holder[Number(key)] = value;
  else Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });
}

function change(job: { [key: string]: Tree }, next: Random): void {
  const all = places(job);
  const [holder, key] = all.length === 0 ? [job, 'mat'] : pick(next, all);
  const roll = next();
  if (roll < 0.34) {
    const openings = job.openings;
    const one = Array.isArray(openings) ? pick(next, openings) : undefined;
    if (isMap(one)) {
      const more = pick(next, OPENING)(next);
      if ('size' in more) delete one.artwork;
      if ('artwork' in more) delete one.size;
      for (const [name, value] of Object.entries(more)) put(one, name, value);
    }
  } else if (roll < 0.58) {
    const [path, value] = pick(next, PARTS)(next);
    const [head = '', tail] = path.split('.');
    if (tail === undefined) put(job, head, value);
    else {
      const holds = isMap(job[head]) ? job[head] : {};
      put(holds, tail, value);
      put(job, head, holds);
    }
  } else if (roll < 0.7) {
    const [other, name] = pick(next, all.length === 0 ? [[job, 'mat'] as const] : all);
    const [a, b] = [at(holder, key), at(other, name)];
    // A tree that holds itself is no job.
    if (typeof a !== 'object' && typeof b !== 'object') {
      put(holder, key, b);
      put(other, name, a);
    }
  } else if (roll < 0.8) put(holder, key, length(next));
  else if (roll < 0.86) put(holder, key, pick<Tree>(next, [pick(next, WORDS), size(next), [], {}, null, true]));
  else if (roll < 0.93 && Array.isArray(holder)) holder.push(structuredClone(pick(next, holder)));
  else if (roll < 0.97) {
    if (Array.isArray(holder)) holder.splice(Number(key), 1);
    else delete holder[key];
  } else if (isMap(holder)) put(holder, pick(next, KEYS), length(next));
}

/** A good job with a few of its parts changed for others that the format knows, swapped, doubled or taken out; as JSON. */
export function structuredJob(text: string, next: Random): string {
  const job = structuredClone(parse(text) as { [key: string]: Tree });
  const count = 1 + Math.floor(next() * next() * 4);
  for (let i = 0; i < count; i++) change(job, next);
  return JSON.stringify(job);
}
