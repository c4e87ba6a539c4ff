import { wrap } from '../../fonts/measure.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Box } from '../../geometry/box.ts';
import type { Job } from '../../job/job.ts';
import type { Mat } from '../../mat/model.ts';
import { type Block, labelBlock } from '../../text/block.ts';
import { SCALES } from './labels.ts';
import { headWords, layerWords, transferWords } from './words.ts';

export interface Note {
  readonly name: string;
  /** The same words, the best size first. */
  readonly sizes: readonly (() => Block)[];
}

/** The words of the sheet that belong to no stroke. */
export function noteBlocks(mat: Mat, job: Job, layer: number, paper: Box, fonts: Fonts): readonly Note[] {
  const each = (make: (scale: number) => Block): Note['sizes'] => SCALES.map((scale) => () => make(scale));
  const widths = [Math.min(110, paper.width * 0.6), 70, 45, 34];
  const info = (scale: number, width: number): Block => {
    const small = [
      ...(job.customer === undefined ? [] : [job.customer]),
      layerWords(mat, layer),
      headWords(job),
      ...(job.bench.head.scribe === undefined ? [] : [`scribe read at: ${job.bench.head.scribe}`]),
    ];
    return labelBlock(
      [
        ...wrap(job.title, 'bold', 6 * scale, width, fonts).map((text) => ({
          group: 'notes',
          text,
          size: 6 * scale,
          weight: 'bold' as const,
        })),
        ...wrap(transferWords(job), 'bold', 5 * scale, width, fonts).map((text) => ({
          group: 'notes',
          text,
          size: 5 * scale,
          weight: 'bold' as const,
        })),
        ...small
          .flatMap((words) => wrap(words, 'regular', 4.5 * scale, width, fonts))
          .map((text) => ({ group: 'notes', text, size: 4.5 * scale, weight: 'regular' as const })),
      ],
      fonts,
    );
  };
  return [
    {
      name: 'TOP',
      sizes: each((k) => labelBlock([{ group: 'notes', text: '↑ TOP', size: 12 * k, weight: 'bold' }], fonts)),
    },
    {
      name: 'BACK, this side up',
      sizes: each((k) =>
        labelBlock(
          [
            { group: 'notes', text: 'BACK', size: 15 * k, weight: 'bold' },
            { group: 'notes', text: 'this side up', size: 6.5 * k, weight: 'bold' },
          ],
          fonts,
        ),
      ),
    },
    { name: 'job, layer and head', sizes: SCALES.flatMap((scale) => widths.map((width) => () => info(scale, width))) },
    {
      name: 'hinge edge',
      sizes: each((k) =>
        labelBlock(
          [{ group: 'hinge', text: 'hinge along this edge (grey dashes)', size: 4.5 * k, weight: 'regular' }],
          fonts,
        ),
      ),
    },
  ];
}
