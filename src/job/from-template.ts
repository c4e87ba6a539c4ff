import { type Document, isCollection, isMap, isScalar, isSeq, parseDocument } from 'yaml';
import { UNITS } from '../shop/units.ts';
import { showLength } from '../units/print.ts';
import { LENGTH_UNITS, type LengthUnit } from '../units/units.ts';
import { type AnswerName, type Answers, givenNames } from './answers.ts';
import { bareLengths } from './bare-lengths.ts';
import { usualTrimBack } from './layer.ts';
import { type Misfit, misfits, placesOf } from './template-places.ts';

/** Lengths are written as numbers where that is what they are, so that a file reads as one would write it by hand. */
const plain = (text: string): string | number => (/^\d+(?:\.\d+)?$/u.test(text) ? Number(text) : text);

/**
 * A starter's text with the answers in it, comments kept; or the answers that it has no place for. What no answer speaks
 * of keeps its size, also where the job's unit becomes another.
 */
export function fillTemplate(
  text: string,
  answers: Answers,
): { readonly text: string } | { readonly misfits: readonly Misfit[] } {
  const document = parseDocument(text, { version: '1.2', schema: 'core' });
  const wrong = misfits(answers, placesOf(document.toJS()));
  if (wrong.length > 0) return { misfits: wrong };
  if (answers.openings !== undefined) countOpenings(document, answers.openings);
  const own = LENGTH_UNITS.find((unit) => unit === document.get('units')) ?? UNITS;
  if (answers.units !== undefined && answers.units !== own) keepSizes(document, own);
  for (const name of givenNames(answers)) PUT[name](document, answers);
  return { text: document.toString({ lineWidth: 0, flowCollectionPadding: false }) };
}

type Put = (document: Document, answers: Answers) => void;

const openingsWith = (document: Document, key: string): readonly number[] =>
  listOf(document, ['openings']).flatMap((each, i) => (isMap(each) && each.has(key) ? [i] : []));

/** Where each answer goes. How many openings there are is dealt with before; one way of giving the size takes the place of the other. */
const PUT: { readonly [Name in AnswerName]: Put } = {
  title: (document, { title }) => document.set('title', title),
  customer: (document, { customer }) => document.set('customer', customer),
  units: (document, { units }) => document.set('units', units),
  openings: () => undefined,
  outer: (document, answers) => {
    borderFollows(document);
    document.deleteIn(['mat', 'frame']);
    document.setIn(['mat', 'outer'], plain(answers.outer ?? ''));
  },
  frame: (document, answers) => {
    borderFollows(document);
    const inside = document.createNode({ inside: plain(answers.frame ?? '') }, { flow: true });
    document.deleteIn(['mat', 'outer']);
    document.setIn(['mat', 'frame'], inside);
  },
  border: (document, answers) => {
    const size = answers.outer ?? answers.frame;
    if (size === undefined) for (const key of ['outer', 'frame']) document.deleteIn(['mat', key]);
    document.setIn(['mat', 'border'], plain(answers.border ?? ''));
  },
  weighting: (document, answers) =>
    document.setIn(['mat', 'weighting'], document.createNode(weightingOf(answers.weighting ?? ''), { flow: true })),
  boards: (document, { boards = [] }) => {
    if (!document.hasIn(['mat', 'layers'])) document.setIn(['mat', 'layers'], document.createNode([{}]));
    for (const [i, board] of boards.entries())
      if (board !== undefined) document.setIn(['mat', 'layers', i, 'board'], board);
  },
  head: (document, { head }) => document.setIn(['bench', 'head'], head),
  reveal: (document, answers) => {
    for (let i = 1; document.hasIn(['mat', 'layers', i]); i++)
      document.setIn(['mat', 'layers', i, 'reveal'], plain(answers.reveal ?? ''));
  },
  artworks: (document, { artworks = [] }) => {
    for (const [i, opening] of openingsWith(document, 'artwork').entries()) {
      const artwork = artworks[i];
      if (artwork !== undefined) document.setIn(['openings', opening, 'artwork'], plain(artwork));
    }
  },
  overlap: (document, answers) => instead(document, 'float', 'overlap', answers.overlap),
  float: (document, answers) => instead(document, 'overlap', 'float', answers.float),
};

/** Borders that the outer size followed from now follow from it. */
function borderFollows(document: Document): void {
  if (!document.hasIn(['mat', 'outer'])) document.deleteIn(['mat', 'border']);
}

function instead(document: Document, gone: string, key: string, value: string | undefined): void {
  for (const i of openingsWith(document, 'artwork')) {
    document.deleteIn(['openings', i, gone]);
    document.setIn(['openings', i, key], plain(value ?? ''));
  }
}

/** `none`, `diagonal`, `add 1/2`, or a ratio. */
function weightingOf(text: string): string | Readonly<Record<string, string | number>> {
  const add = /^add\s+(.*)$/u.exec(text)?.[1];
  if (add !== undefined) return { add: plain(add) };
  return text === 'none' || text === 'diagonal' ? text : { ratio: plain(text) };
}

/** More openings are like the last one, without its name; one alone that becomes several lies in a row. */
function countOpenings(document: Document, count: number): void {
  const before = listOf(document, ['openings']).length;
  for (let i = before; i > count; i--) document.deleteIn(['openings', i - 1]);
  const last = document.getIn(['openings', Math.min(before, count) - 1]);
  for (let i = before; i < count; i++) {
    const more = isCollection(last) ? last.clone() : undefined;
    if (!isMap(more)) continue;
    more.delete('name');
    document.addIn(['openings'], more);
  }
  if (count > 1 && !document.has('arrange')) document.set('arrange', document.createNode({ rows: 1 }, { flow: true }));
}

/** Every length without a unit gets the one that it was written in, and what the unit would decide is written out. */
function keepSizes(document: Document, unit: LengthUnit): void {
  for (const path of bareLengths(document.toJS())) {
    const node = document.getIn(path, true);
    if (!isScalar(node)) continue;
    document.setIn(path, document.createNode(`${String(node.source ?? node.value)} ${unit}`));
  }
  const stack = document.getIn(['bench', 'stack']) === 'apart' ? 'apart' : 'together';
  for (const [i, layer] of listOf(document, ['mat', 'layers']).entries())
    if (i > 0 && isMap(layer) && !layer.has('trimBack'))
      layer.set('trimBack', showLength(usualTrimBack(unit, i, stack), unit));
  // Settings would lie on another graduation, and the opening would be moved there.
  if (document.hasIn(['bench', 'snap'])) document.setIn(['bench', 'snap'], false);
}

function listOf(document: Document, path: readonly string[]): readonly unknown[] {
  const list = document.getIn(path);
  return isSeq(list) ? list.items : [];
}
