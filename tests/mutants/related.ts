/** Which tests speak of a folder of `src/`: its own, and those of what stands on it. */
export interface Related {
  readonly own: readonly string[];
  readonly other: readonly string[];
}

const tests = (...names: readonly string[]): readonly string[] => names.map((name) => `tests/${name}/`);

/** The folders where a wrong number spoils a board. */
export const RELATED: Readonly<Record<string, Related>> = {
  units: { own: tests('units'), other: tests('job', 'mat', 'bench', 'papers') },
  geometry: { own: tests('geometry', 'shapes'), other: tests('drawing', 'mat', 'cutfiles', 'bench') },
  shapes: { own: tests('shapes'), other: tests('mat', 'bench', 'cutfiles') },
  mat: { own: tests('mat'), other: tests('bench', 'documents', 'cutfiles') },
  bench: { own: tests('bench'), other: tests('documents', 'cutfiles', 'mat') },
  paper: { own: tests('paper'), other: tests('writers', 'documents') },
  cutfiles: { own: tests('cutfiles'), other: tests('writers', 'bench') },
  writers: { own: tests('writers'), other: tests('paper', 'documents', 'cutfiles') },
  stock: { own: tests('stock'), other: tests('documents') },
};

export const GOLDEN: readonly string[] = tests('golden');
