import type { OutputOptions } from '../../outputs/options.ts';
import type { Progress } from '../progress.ts';
import type { Crew } from './crew.ts';
import type { Writer } from './writer.ts';

/** How a day is made. */
export interface How {
  /** Where what is for all jobs together goes; without it nothing is made for all together. */
  readonly out?: string;
  readonly options: OutputOptions;
  readonly version: string;
  /** Pages of one job. */
  readonly sheets: number;
  /** Make again what is as it should be. */
  readonly force: boolean;
  /** Believe no file's size and time. */
  readonly verify: boolean;
  readonly crew: Crew;
  readonly progress: Progress;
  readonly stopped: () => boolean;
  readonly writer: Writer;
}
