/** Something that a new user tries: what is called, and what is to be seen then. */
export interface Task {
  readonly what: string;
  /** Commands, one after the other; the last one is looked at. */
  readonly calls: readonly (readonly string[])[];
  readonly code?: number;
  /** Words of both outputs; each must be there. */
  readonly sees: readonly string[];
  /** Words that must not be there. */
  readonly never?: readonly string[];
  readonly files?: Readonly<Record<string, string>>;
  readonly stdin?: string;
  /** Files that must be there afterwards, and no others but the given ones where `only` is set. */
  readonly made?: readonly string[];
}

export const JOB = 'mat:\n  outer: 16 x 20\nopenings:\n  - artwork: 10 1/2 x 13 1/2\n';
export const PAIR =
  'mat: {border: 2}\nopenings:\n  - {name: Heron, artwork: 5 x 7}\n  - {name: Tern, artwork: 5 x 7}\n';
export const SHOP =
  'units: in\nboards:\n  bone: {name: Bone, thickness: 1.4 mm, colour: "#efe9dc", sheets: [32 x 40]}\n  slate: {name: Slate, thickness: 1.4 mm, sheets: [32 x 40]}\nheads: {pull: {bevel: 45}}\nguide: {graduation: 1/16 in}\n';

/** One call of the program in a folder with one job. */
export const task = (what: string, call: string, sees: readonly string[], more: Partial<Task> = {}): Task => ({
  what,
  calls: [words(call)],
  sees,
  files: { 'job.yaml': JOB },
  ...more,
});

/** A call as it is typed: by spaces, but for what stands in double quotes. */
export const words = (call: string): readonly string[] =>
  [...call.matchAll(/"([^"]*)"|(\S+)/gu)].map(([, quoted, plain]) => quoted ?? plain ?? '');

/** A job that cannot be made, and what is said of it. */
export const wrong = (what: string, text: string, sees: readonly string[]): Task =>
  task(what, 'check job.yaml', sees, { files: { 'job.yaml': text }, code: 2, made: [] });
