/** What a thread of the pool loads: the tasks, and what they need to build SVG. */
import '../../node.ts';
import type { TaskKind, Tasks } from './tasks.ts';
import { work } from './work.ts';

export default <Kind extends TaskKind>({
  kind,
  task,
}: {
  readonly kind: Kind;
  readonly task: Tasks[Kind]['task'];
}): Promise<Tasks[Kind]['answer']> => work(kind, task);
