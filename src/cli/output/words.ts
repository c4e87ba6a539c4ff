import type { DrawnDocument, DrawnFile } from '../../outputs/output.ts';
import type { OutputId, Records } from '../../outputs/records.ts';
import type { Problem } from '../../problems/problem.ts';
import type { Finished } from './finished.ts';

/** What the terminal says of an output: each of its documents with what it is, and what holds for all of it. */
export function wordsOf({ prepared: { drawn }, files }: Finished): readonly string[] {
  const names = files.map(({ name }) => name);
  return [
    ...drawn.documents.flatMap((each) => said(names.find((name) => isOf(name, each)) ?? each.name, each)),
    ...drawn.drawings.flatMap((each) => names.filter((name) => isCut(name, each)).flatMap((name) => said(name, each))),
    ...drawn.notes,
  ];
}

const said = (name: string, { said: what, more }: Pick<DrawnDocument, 'said' | 'more'>): readonly string[] => [
  `${name}  ${what}`,
  ...more.map((line) => `  ${line}`),
];

const isOf = (file: string, { name }: DrawnDocument): boolean =>
  file.startsWith(`${name}.`) || file.startsWith(`${name}-`);

/** Endings of drawings that are files by themselves. */
const ENDINGS = ['svg', 'dxf', 'plt'];
const isCut = (file: string, { name }: DrawnFile): boolean => ENDINGS.some((ending) => file === `${name}.${ending}`);

type Shape<Id extends OutputId> = (record: Records[Id], made: Finished<Id>) => Readonly<Record<string, unknown>>;

/** What stands in the JSON of each command between its files and its warnings. */
const SHAPES: { readonly [Id in OutputId]: Shape<Id> } = {
  pattern: (patterns, made) => ({
    board: patterns[0]?.board,
    pages: patterns.flatMap(({ pages }) => pages),
    patterns,
    ...reportOf(made),
  }),
  proof: (proof, made) => ({ proof, ...reportOf(made) }),
  placement: (placement, made) => ({ placement, ...reportOf(made) }),
  cutfile: (cutfiles) => ({ cutfiles }),
  ticket: (ticket, made) => ({ ...sheetsOf(made), ticket, ...jobsOf(made) }),
  blanks: (blanks, made) => ({ ...sheetsOf(made), blanks, ...jobsOf(made) }),
  labels: (labels, made) => ({ ...sheetsOf(made), labels, ...jobsOf(made) }),
  intake: (intake, made) => ({ ...sheetsOf(made), intake, ...jobsOf(made) }),
  stock: (stock) => ({ stock }),
  jig: ({ kind, sheets, printer }) => ({ kind, sheets, printer }),
};

export function jsonOf<Id extends OutputId>(made: Finished<Id>, warnings: readonly Problem[]) {
  const { id, drawn, taken } = made.prepared;
  const shape: Shape<Id> = SHAPES[id];
  const files = made.files.map(({ name }) => name);
  return { folder: made.folder, files, ...shape(drawn.record, made), taken, warnings };
}

const reportOf = ({ jobs }: Finished) => jobs[0]?.solved.report;
const jobsOf = ({ jobs }: Finished) => ({ jobs: jobs.map(({ file, solved }) => ({ file, ...solved.report })) });
const sheetsOf = ({ prepared }: Finished) => ({
  sheets: prepared.drawn.documents.reduce((sum, { document }) => sum + document.pages.length, 0),
});
