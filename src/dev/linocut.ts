/**
 * `tsx src/dev/linocut.ts`: the picture of examples/heron, drawn here by code: a heron in the reeds at low water, as it
 * might be cut in lino and printed in two colours. The same code gives the same picture.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { PNG } from 'pngjs';

const [WIDTH, HEIGHT] = [700, 900];
/** Of the drawing, as pixels: as fine as a proof on letter paper shows it. */
const SHARE = 0.8;
const PAPER = '#f3ecdc';
const INK = '#1f2f3a';
const SUN = '#d98b3f';

/** Evenly spread from 0 to 1, the same every time (Lehmer's generator with Park and Miller's factor). */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

const next = chance(1107);
const between = (low: number, high: number): number => low + (high - low) * next();
const f = (value: number): string => value.toFixed(1);

/** A gouge's mark: pointed at both ends, widest in the middle. */
function mark(x: number, y: number, dx: number, dy: number, wide: number, fill: string): string {
  const long = Math.hypot(dx, dy);
  const [nx, ny] = [(-dy / long) * wide, (dx / long) * wide];
  const [mx, my] = [x + dx * 0.55, y + dy * 0.55];
  return `<path fill="${fill}" d="M${f(x)} ${f(y)}Q${f(mx + nx)} ${f(my + ny)} ${f(x + dx)} ${f(y + dy)}Q${f(mx - nx)} ${f(my - ny)} ${f(x)} ${f(y)}Z"/>`;
}

const parts: string[] = [];
const add = (...svg: readonly string[]): void => {
  parts.push(...svg);
};

// The block, its edge a little uneven as a hand leaves it, printed on cream paper.
const [left, top, right, bottom] = [52, 52, 648, 848];
const edge = (x0: number, y0: number, x1: number, y1: number): string =>
  Array.from({ length: 24 }, (_, i) => {
    const t = (i + 1) / 24;
    return `L${f(x0 + (x1 - x0) * t + between(-0.9, 0.9))} ${f(y0 + (y1 - y0) * t + between(-0.9, 0.9))}`;
  }).join('');
add(`<rect width="${WIDTH}" height="${HEIGHT}" fill="${PAPER}"/>`);
const block = `M${left} ${top}${edge(left, top, right, top)}${edge(right, top, right, bottom)}${edge(right, bottom, left, bottom)}${edge(left, bottom, left, top)}Z`;
add(`<path fill="${INK}" d="${block}"/>`);

// The sun low over the water, and the sky cut away around it in rings.
const sun = { x: 458, y: 262, r: 84 };
add(`<clipPath id="block"><path d="${block}"/></clipPath><g clip-path="url(#block)">`);
for (let ring = 0; ring < 17; ring++) {
  const r = sun.r + 20 + ring * 19;
  const count = Math.round((2 * Math.PI * r) / 34);
  for (let i = 0; i < count; i++) {
    const a = ((i + between(0.05, 0.3) + (ring % 2) / 2) / count) * 2 * Math.PI;
    const span = (between(20, 30) / r) * (ring < 6 ? 1 : 0.86);
    const [x, y] = [sun.x + r * Math.cos(a), sun.y + r * Math.sin(a)];
    if (y > 560) continue;
    const [x2, y2] = [sun.x + r * Math.cos(a + span), sun.y + r * Math.sin(a + span)];
    add(mark(x, y, x2 - x, y2 - y, Math.max(1.5, 6.2 - ring * 0.27), PAPER));
  }
}
add(`<circle cx="${sun.x}" cy="${sun.y}" r="${sun.r}" fill="${SUN}"/>`);

// Far shore, then the water: level marks that grow towards the eye.
add(`<path fill="${INK}" d="M0 566C120 552 190 560 290 556C420 550 560 562 700 548V590H0Z"/>`);
add(`<rect x="0" y="576" width="${WIDTH}" height="300" fill="${INK}"/>`);
for (let row = 0; row < 19; row++) {
  const y = 586 + row * row * 0.5 + row * 5.4;
  const wide = 1.1 + row * 0.17;
  for (let x = left - 20 + between(0, 30); x < right; ) {
    const long = between(26, 62) + row * 2.2;
    const lit = Math.abs(x + long / 2 - sun.x) < 92 - row * 2.6 && next() < 0.78;
    add(mark(x, y + between(-1.6, 1.6), long, between(-0.8, 0.8), lit ? wide * 1.9 : wide, lit ? SUN : PAPER));
    x += long + between(8, 26);
  }
}

// The heron: one dark shape, edged by a cut line so that it stands off the sky.
const heron =
  'M262 716C262 676 258 640 262 604C236 596 214 574 208 542C204 516 214 486 236 458C262 424 296 404 312 372C322 352 318 332 304 316C290 300 276 284 280 262C284 240 304 226 328 228C346 230 358 236 366 244L436 262L366 258C362 268 350 274 340 274C328 274 322 280 324 290C330 310 346 330 346 362C346 398 332 424 338 452C344 482 342 520 322 552C312 568 300 584 290 598C292 640 300 664 330 650L334 656C304 676 288 664 284 626C282 660 280 690 280 716Z';
add(`<path fill="${INK}" stroke="${PAPER}" stroke-width="7" stroke-linejoin="round" d="${heron}"/>`);
// Crest, eye, and the feathers of the wing and the breast.
add(mark(322, 232, -86, 6, 4.4, PAPER), mark(320, 236, -82, 16, 2.4, INK));
add(`<circle cx="338" cy="248" r="5.4" fill="${PAPER}"/><circle cx="339" cy="248" r="2.4" fill="${INK}"/>`);
add(mark(366, 251, 64, 11, 2.2, SUN));
for (let i = 0; i < 9; i++) add(mark(318 - i * 1.4, 300 + i * 15, 10 - i * 0.6, 15, 2.1, PAPER));
for (let row = 0; row < 8; row++) {
  for (let i = 0; i < 6; i++) {
    const [x, y] = [312 - i * 16 - row * 3 + between(-2, 2), 430 + row * 15 + i * 9 + between(-2, 2)];
    if (x < 226 + row * 3 || x > 330 - row * 4) continue;
    add(mark(x, y, -15 - row, 21 + row, 3, PAPER));
  }
}
add(mark(270, 616, 2, 92, 2.2, PAPER));

// Reeds in front, bending with the wind, and their heads.
for (let i = 0; i < 26; i++) {
  const x = i < 15 ? between(56, 196) : between(506, 646);
  const tall = between(240, 470);
  const bend = between(14, 64);
  const wide = between(3, 5.6);
  const y = 862;
  const blade = `M${f(x - wide)} ${y}Q${f(x)} ${f(y - tall * 0.6)} ${f(x + bend)} ${f(y - tall)}Q${f(x + wide + 3)} ${f(y - tall * 0.55)} ${f(x + wide)} ${y}Z`;
  add(`<path fill="${INK}" stroke="${PAPER}" stroke-width="2.6" d="${blade}"/>`);
  if (i % 3 === 0) {
    const [hx, hy] = [x + bend * 0.86, y - tall * 0.93];
    add(
      `<ellipse cx="${f(hx)}" cy="${f(hy)}" rx="7.4" ry="30" transform="rotate(${f(bend / 4)} ${f(hx)} ${f(hy)})" fill="${INK}" stroke="${PAPER}" stroke-width="2.6"/>`,
    );
  }
}
add('</g>');

const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH * SHARE}" height="${HEIGHT * SHARE}" viewBox="0 0 ${WIDTH} ${HEIGHT}">${parts.join('\n')}</svg>`;
const top_ = join(import.meta.dirname, '../..');
await initWasm(readFileSync(createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm')));
const { width, height, pixels } = new Resvg(svg).render();
const png = new PNG({ width, height });
png.data = Buffer.from(pixels);
writeFileSync(
  join(top_, 'examples/heron/heron.png'),
  PNG.sync.write(png, { colorType: 2, inputColorType: 6, deflateLevel: 9, filterType: 0, deflateStrategy: 0 }),
);
