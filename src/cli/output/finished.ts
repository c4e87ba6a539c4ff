import type { Prepared } from '../../outputs/prepare.ts';
import type { OutputId } from '../../outputs/records.ts';
import type { OutputFile } from '../../outputs/write.ts';
import type { SourceFile } from '../input.ts';
import type { SolvedFile } from '../jobs.ts';

/** What was made of which jobs, and where it goes. */
export interface Finished<Id extends OutputId = OutputId> {
  readonly prepared: Prepared<Id>;
  readonly files: readonly OutputFile[];
  readonly folder: string;
  readonly jobs: readonly SolvedFile[];
  readonly shop?: SourceFile;
}
