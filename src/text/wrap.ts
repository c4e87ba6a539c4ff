import { expression } from '../problems/expression.ts';

/**
 * Lines no wider than `width`, broken at spaces, after a hyphen or dash between letters, and inside a word only where
 * it is wider than a line; within a size (`15 3/4 × 20 in`) only where that is. A line break in the text stays one; a row of spaces counts as one, a no-break space never
 * breaks. A single character wider than `width` gets a line of its own.
 * How wide a part of the text is, its spaces counted, says `wide`.
 */
export function wrap(text: string, width: number, wide: (part: string) => number): string[] {
  const lines: string[] = [];
  let line = '';
  let used = 0;
  const put = (part: string, partWidth: number): void => {
    if (line !== '' && used + partWidth > width) {
      lines.push(withoutLast(line));
      line = '';
      used = 0;
      part = part.replace(/^ /, '');
      partWidth = wide(part);
    }
    line += part;
    used += partWidth;
  };
  for (const paragraph of text.normalize('NFC').split(/\r\n|[\n\r\u2028\u2029]/u)) {
    for (const words of measures(paragraph)) {
      const together = words.join(' ');
      for (const word of words.length > 1 && wide(together) > width ? words : [together]) {
        let gap = line === '' ? '' : ' ';
        for (const part of words.length === 1 && HYPHEN.test(word) ? word.split(hyphens()) : [word]) {
          const whole = gap + part;
          gap = '';
          const partWidth = wide(whole);
          if (partWidth <= width || wide(part) <= width) put(whole, partWidth);
          else for (const character of whole) put(character, wide(character));
        }
      }
    }
    lines.push(withoutLast(line));
    line = '';
    used = 0;
  }
  return lines;
}

/** Only the plain space that a break takes the place of. */
const withoutLast = (line: string): string => line.replace(/ $/, '');

const HYPHEN = /[-\u2010\u2013\u2014]/;
const hyphens = expression(String.raw`(?<=\p{L}[-\u2010\u2013\u2014])(?=\p{L})`);

const NUMBER = /[0-9½¼¾⅐-⅞₀-₉]$/;
const GOES_ON = /^(?:×|(?:in|mm|cm)(?![a-z])|\d+\/\d)/;

/** The words of a text, those of one size together: read from line to line it is taken for another. */
function measures(text: string): readonly string[][] {
  const all: string[][] = [];
  let before = '';
  for (const word of text.split(/[ \t]+/u)) {
    if (word === '') continue;
    const open = all.at(-1);
    if (open !== undefined && (before === '×' || (GOES_ON.test(word) && NUMBER.test(before)))) open.push(word);
    else all.push([word]);
    before = word;
  }
  return all;
}
