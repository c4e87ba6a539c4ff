import { isMap, isScalar, parseDocument, visit } from 'yaml';

/** What a starter job is told; texts as they are written in a job. */
export interface Answers {
  readonly title?: string | undefined;
  readonly customer?: string | undefined;
  readonly units?: string | undefined;
  readonly outer?: string | undefined;
  /** Measured inside the rebate. */
  readonly frame?: string | undefined;
  readonly border?: string | undefined;
  /** Of every layer below the top mat. */
  readonly reveal?: string | undefined;
  readonly artwork?: string | undefined;
  readonly overlap?: string | undefined;
  readonly float?: string | undefined;
}

/** Lengths are written as numbers where that is what they are, so that a file reads as one would write it by hand. */
const plain = (text: string): string | number => (/^\d+(?:\.\d+)?$/u.test(text) ? Number(text) : text);

/**
 * A starter's text with the answers in it, comments kept. One way of giving the size takes the place of the other:
 * an outer size, a frame, or a border with neither, from which the outer size follows.
 */
export function fillTemplate(text: string, answers: Answers): string {
  const document = parseDocument(text, { version: '1.2', schema: 'core' });
  const set = (path: readonly (string | number)[], value: string | undefined): void => {
    if (value !== undefined) document.setIn(path, plain(value));
  };
  if (answers.units !== undefined && answers.units !== document.get('units')) {
    keepUnits(document, String(document.get('units') ?? 'in'));
  }
  set(['title'], answers.title);
  set(['customer'], answers.customer);
  set(['units'], answers.units);
  if (answers.outer !== undefined) {
    document.deleteIn(['mat', 'frame']);
    set(['mat', 'outer'], answers.outer);
  } else if (answers.frame !== undefined) {
    document.deleteIn(['mat', 'outer']);
    document.setIn(['mat', 'frame'], document.createNode({ inside: plain(answers.frame) }, { flow: true }));
  } else if (answers.border !== undefined) document.deleteIn(['mat', 'outer']);
  set(['mat', 'border'], answers.border);
  for (let i = 1; document.hasIn(['mat', 'layers', i]); i++) set(['mat', 'layers', i, 'reveal'], answers.reveal);
  set(['openings', 0, 'artwork'], answers.artwork);
  if (answers.float !== undefined) document.deleteIn(['openings', 0, 'overlap']);
  if (answers.overlap !== undefined) document.deleteIn(['openings', 0, 'float']);
  set(['openings', 0, 'overlap'], answers.overlap);
  set(['openings', 0, 'float'], answers.float);
  return document.toString({ lineWidth: 0, flowCollectionPadding: false });
}

/** Keys whose bare numbers are in the job's unit. */
const LENGTHS = [
  'outer',
  'border',
  'add',
  'reveal',
  'trimBack',
  'artwork',
  'overlap',
  'float',
  'size',
  'top',
  'bottom',
  'sides',
  'left',
  'right',
  'lip',
  'clearance',
];

/** Lengths without a unit get the one that they were written in, since the bare numbers now mean another. */
function keepUnits(document: ReturnType<typeof parseDocument>, unit: string): void {
  visit(document, {
    Pair(_, pair) {
      if (!isScalar(pair.key) || !LENGTHS.includes(String(pair.key.value)) || isMap(pair.value)) return;
      if (!isScalar(pair.value) || /[a-z"]\s*$/iu.test(String(pair.value.value))) return;
      const text = `${pair.value.source ?? pair.value.value} ${unit}`;
      pair.value = document.createNode(text);
    },
  });
}
