import type { Fonts } from '../../fonts/model.ts';
import type { Box } from '../../geometry/box.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import { type Block, labelBlock } from '../../text/block.ts';
import {
  BOLD,
  FINE,
  FINE_BOLD,
  HEAD,
  LARGE,
  LARGE_BOLD,
  LEAD_IN,
  NAME,
  NUMBER,
  READING,
  SIGN,
  type Style,
  stepsDown,
  TEXT,
} from '../../text/styles.ts';
import { REVERSE_CORNERS } from '../words/reverse-corners.ts';
import { headWords, layerWords, transferWords } from './words.ts';

export interface Note {
  readonly name: string;
  /** The same words, the best size first. */
  readonly sizes: readonly (() => Block)[];
}

/** The words of the sheet that belong to no stroke. */
export function noteBlocks(mat: Mat, job: Job, layer: number, paper: Box, fonts: Fonts): readonly Note[] {
  const widths = [Math.min(110, paper.width * 0.6), 70, 45, 34];
  const { customer, bench } = job;
  const { bevel, setback } = mat.layers[layer]!;
  const freed = bevel.reverse && setback > bench.head.overrun;
  const said = [
    ...(customer === undefined ? [] : [customer]),
    layerWords(mat, layer),
    ...(freed ? [REVERSE_CORNERS] : []),
    headWords(job),
    ...(bench.head.scribe === undefined ? [] : [`scribe read at: ${bench.head.scribe}`]),
  ];
  const info = ({ title, transfer, words }: InfoStyles, width: number): Block =>
    labelBlock(
      [
        { text: job.title, style: title },
        { text: transferWords(job), style: transfer },
        ...said.map((text) => ({ text, style: words })),
      ].map((line) => ({ ...line, group: 'notes', width })),
      fonts,
    );
  return [
    { name: 'TOP', sizes: topBlocks(fonts) },
    { name: 'BACK, this side up', sizes: sideBlocks('BACK', fonts) },
    { name: 'job, layer and head', sizes: INFO.flatMap((styles) => widths.map((width) => () => info(styles, width))) },
    {
      name: 'hinge edge',
      sizes: stepsDown(LEAD_IN).map(
        (style) => () => labelBlock([{ group: 'hinge', text: 'hinge along this edge (grey dashes)', style }], fonts),
      ),
    },
  ];
}

interface InfoStyles {
  readonly title: Style;
  readonly transfer: Style;
  readonly words: Style;
}

/** From full size down, as all words on a pattern. */
export const INFO: readonly InfoStyles[] = [
  { title: SIGN, transfer: HEAD, words: LEAD_IN },
  { title: HEAD, transfer: LARGE_BOLD, words: LARGE },
  { title: LARGE_BOLD, transfer: BOLD, words: TEXT },
  { title: BOLD, transfer: FINE_BOLD, words: FINE },
];

/** The arrow and the word that say which edge is the top. */
export const topBlocks = (fonts: Fonts): Note['sizes'] =>
  [READING, NAME, SIGN, HEAD].map((style) => () => labelBlock([{ group: 'notes', text: '↑ TOP', style }], fonts));

/** Which side of the board is up. */
export const sideBlocks = (side: 'BACK' | 'FACE', fonts: Fonts): Note['sizes'] =>
  (
    [
      [NUMBER, SIGN],
      [READING, HEAD],
      [NAME, LARGE_BOLD],
      [SIGN, FINE_BOLD],
    ] as const
  ).map(
    ([large, small]) =>
      () =>
        labelBlock(
          [
            { group: 'notes', text: side, style: large },
            { group: 'notes', text: 'this side up', style: small },
          ],
          fonts,
        ),
  );
