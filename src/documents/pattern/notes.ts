import type { Fonts } from '../../fonts/model.ts';
import type { Box } from '../../geometry/box.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import { type Block, labelBlock } from '../../text/block.ts';
import {
  CLEAR,
  FINE_BOLD,
  HEAD,
  LARGE_BOLD,
  NAME,
  NUMBER,
  READING,
  SIGN,
  type Style,
  stepsDown,
} from '../../text/styles.ts';
import type { Note } from '../full-scale/note-labels.ts';
import { TOP_STEPS, WORD_STEPS, type WordStyles } from '../full-scale/word-steps.ts';
import { REVERSE_CORNERS } from '../words/reverse-corners.ts';
import { headWords, layerWords, transferWords } from './words.ts';

/** What the sheet belongs to, and what is to be known of it. */
export function jobNote(
  title: string,
  bold: readonly string[],
  plain: readonly string[],
  widths: readonly number[],
  fonts: Fonts,
): Note {
  const info = (styles: WordStyles, width: number): Block =>
    labelBlock(
      [
        { text: title, style: styles.title },
        ...bold.map((text) => ({ text, style: styles.strong })),
        ...plain.map((text) => ({ text, style: styles.words })),
      ].map((line) => ({ ...line, group: 'notes', width })),
      fonts,
    );
  const sizes = WORD_STEPS.flatMap((styles) => widths.map((width) => () => info(styles, width)));
  return { name: 'job, layer and head', sizes };
}

/** The job, its layer and the head of a pattern of the back. */
export function backNote(mat: Mat, job: Job, layer: number, paper: Box, fonts: Fonts): Note {
  const { scribe, overrun } = job.bench.head;
  const { bevel, setback } = mat.layers[layer]!;
  const freed = bevel.reverse && setback > overrun;
  const plain = [
    ...(job.customer === undefined ? [] : [job.customer]),
    layerWords(mat, layer),
    ...(freed ? [REVERSE_CORNERS] : []),
    headWords(job),
    ...(scribe === undefined ? [] : [`scribe read at: ${scribe}`]),
  ];
  return jobNote(job.title, [transferWords(job)], plain, [Math.min(110, paper.width * 0.6), 70, 45, 34], fonts);
}

/** Which side of the board lies up: in large type, at least in 9 pt. */
export function sideNote(side: 'BACK' | 'FACE', fonts: Fonts): Note {
  const block = (large: Style, small: Style): Block =>
    labelBlock(
      [
        { group: 'notes', text: side, style: large },
        { group: 'notes', text: 'this side up', style: small },
      ],
      fonts,
    );
  const line = (style: Style): Block => labelBlock([{ group: 'notes', text: `${side}, this side up`, style }], fonts);
  return {
    name: `${side}, this side up`,
    sizes: [
      () => block(NUMBER, SIGN),
      () => block(READING, HEAD),
      () => block(NAME, LARGE_BOLD),
      () => block(SIGN, FINE_BOLD),
      ...TOP_STEPS.filter(({ size }) => size <= HEAD.size).map((style) => () => line(style)),
    ],
  };
}

export const topNote = (fonts: Fonts): Note => ({
  name: 'TOP',
  sizes: TOP_STEPS.map((style) => () => labelBlock([{ group: 'notes', text: '↑ TOP', style }], fonts)),
});

export const hingeNote = (fonts: Fonts): Note => ({
  name: 'hinge edge',
  sizes: stepsDown(CLEAR).map(
    (style) => () => labelBlock([{ group: 'hinge', text: 'hinge along this edge (grey dashes)', style }], fonts),
  ),
});
