import { type ComponentChild, h } from 'preact';

/** Of the digits of the face, in em; of a capital and of what stands between a whole number and its fraction, about. */
const DIGIT = 0.6;
const LETTER = 0.66;
const GAP = 0.2;
/** Digits of a fraction, one number over the other, beside those of the whole. */
const SMALL = 0.64;

/** As large as its column lets it be, and never more of the screen's height than leaves room for the rest. */
const sizeFor = (ems: number): string => `min(var(--tallest), ${Math.floor(9600 / ems) / 100}cqw)`;

/** What is read from two metres away: a reading on one line, its fraction upright; words may take two. */
export function Reading({ big }: { readonly big: string }): ComponentChild {
  const parts = /^(?:(\d+) )?(\d+)\/(\d+)$/u.exec(big);
  if (parts === null) {
    const words = !/\d/u.test(big);
    const ems = words ? Math.max(3, ...big.split(' ').map(({ length }) => length)) * LETTER : big.length * DIGIT;
    return h('span', { class: words ? 'number words' : 'number', style: { fontSize: sizeFor(ems) } }, big);
  }
  const [, whole = '', over = '', under = ''] = parts;
  const ems = whole.length * DIGIT + GAP + Math.max(over.length, under.length) * DIGIT * SMALL;
  return h('span', { class: 'number', style: { fontSize: sizeFor(Math.max(1, ems)) } }, [
    h('span', { key: 'heard', class: 'heard' }, big),
    h('span', { key: 'seen', 'aria-hidden': 'true' }, [
      whole === '' ? null : `${whole} `,
      h('span', { key: 'fraction', class: 'fraction' }, [
        h('span', { key: 'over' }, over),
        h('span', { key: 'under', class: 'under' }, under),
      ]),
    ]),
  ]);
}
