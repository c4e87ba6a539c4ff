import type { Job } from '../job/job.ts';
import { type Candidate, layerSequence } from './layer-sequence.ts';
import type { Stroke } from './model.ts';
import { type Batch, kindOf, type Pass, Passes } from './pass.ts';
import { settingNumbers } from './settings.ts';
import { trailsAmong } from './trail.ts';
import { facing, MOST_FACINGS, turnBetween } from './turning.ts';

/** A stroke that has no place in the order yet. */
export type Unordered = Omit<Stroke, 'order'>;

/** What is done before a stroke. */
export interface Step {
  readonly order: number;
  /** The first stroke of a layer: another board is laid on, TOP up. */
  readonly newLayer: boolean;
  /** The guide is set, or taken off, before this stroke. */
  readonly setGuide: boolean;
  /** Quarter turns of the board before this stroke, clockwise to the eye; negative the other way round. */
  readonly turn: number;
}

export interface WorkOrder {
  /** In the order of work, numbered from 1. */
  readonly strokes: readonly Stroke[];
  /** One for each stroke, same order. */
  readonly steps: readonly Step[];
  /** How often the guide is set again after the first time. */
  readonly guideChanges: number;
  /** Quarter turns over all layers. */
  readonly turns: number;
}

/**
 * The order of work over all layers. The model:
 *
 * - A layer is finished before the next is taken up: a board that leaves the bench half cut has to be aligned again.
 *   Together, the layers come from the top mat down, since each is fixed to the one above; apart, in any order.
 * - Every layer is laid on TOP up, seen from the back. A head travels towards the person, so each stroke asks for one
 *   facing of the board; going from one facing to another costs its quarter turns, the shorter way round.
 * - Fewest changes of the guide come first, then fewest quarter turns, then most strokes before a board is first turned;
 *   what is still alike is settled by the layers from the top mat down and by always turning the board the same way.
 *
 * All strokes of one layer with one setting and one facing are cut together, which costs nothing and never hinders: both
 * costs obey the triangle inequality. Within a layer each setting is visited once; only where a setting joins this layer
 * to the one before and to the one after can a visit at both ends be as good, and that is searched too.
 */
export function order(strokes: readonly Unordered[], stack: Job['bench']['stack']): WorkOrder {
  const numbers = settingNumbers(strokes);
  const layers = [...new Set(strokes.map((s) => s.layer))].sort((a, b) => a - b);
  const works = layers.map((layer) => layerWork(strokes, numbers, layer));
  const sequence = layerSequence(
    works.map((work) => candidates(work, works)),
    stack === 'apart',
  );
  const ordered: Stroke[] = [];
  const steps: Step[] = [];
  let turns = 0;
  let last: number | undefined;
  for (const { layer, chosen } of sequence) {
    const work = works[layer]!;
    let at = 0;
    chosen.pass.cells(chosen.first, chosen.last).forEach((cell, c) => {
      const to = work.facings[cell.facing]!;
      work.strokesAt(cell.setting, cell.facing).forEach((stroke, i) => {
        const turn = i === 0 ? turnBetween(at, to) : 0;
        turns += Math.abs(turn);
        const number = ordered.length + 1;
        ordered.push({ ...stroke, order: number });
        steps.push({ order: number, newLayer: c === 0 && i === 0, setGuide: last !== cell.setting, turn });
        last = cell.setting;
      });
      at = to;
    });
  }
  const guideChanges = Math.max(0, steps.filter((step) => step.setGuide).length - 1);
  return { strokes: ordered, steps, guideChanges, turns };
}

interface LayerWork {
  /** In quarter turns; the first is TOP up. */
  readonly facings: readonly number[];
  readonly passes: Passes;
  readonly strokesAt: (setting: number, facing: number) => readonly Unordered[];
}

function layerWork(strokes: readonly Unordered[], numbers: readonly number[], layer: number): LayerWork {
  const exact = strokes.flatMap((stroke, i) =>
    stroke.layer === layer ? [{ stroke, setting: numbers[i]!, turned: facing(stroke.direction) }] : [],
  );
  const many = new Set(exact.map((s) => s.turned)).size >= MOST_FACINGS;
  const here = many ? exact.map((s) => ({ ...s, turned: (Math.round(s.turned * 6) / 6) % 4 })) : exact;
  // Ties go to the first way found, which is made the one on which the board always turns as from side to next side.
  const clockwise = turnsClockwise(here);
  const facings = [...new Set([0, ...here.map((s) => s.turned)])].sort((a, b) =>
    a === 0 || b === 0 || !clockwise ? a - b : b - a,
  );
  const bySetting = new Map<number, Batch>();
  for (const { setting, turned } of here) {
    const batch = bySetting.get(setting) ?? { setting, mask: 0, up: 0 };
    const mask = batch.mask | (1 << facings.indexOf(turned));
    bySetting.set(setting, { setting, mask, up: batch.up + (turned === 0 ? 1 : 0) });
  }
  return {
    facings,
    passes: new Passes([...bySetting.values()], trailsAmong(facings)),
    strokesAt: (setting, index) =>
      here.filter((s) => s.setting === setting && s.turned === facings[index]).map((s) => s.stroke),
  };
}

/** Whether going round an opening, side after side as they are given, turns the board clockwise to the eye. */
function turnsClockwise(here: readonly { readonly stroke: Unordered; readonly turned: number }[]): boolean {
  const [first, second] = here;
  return first !== undefined && second !== undefined && turnBetween(first.turned, second.turned) > 0;
}

/** Every pass that may be part of the best order: which setting comes first and last matters where layers share it. */
function candidates(work: LayerWork, all: readonly LayerWork[]): readonly Candidate[] {
  const { passes } = work;
  const { batches } = passes;
  const elsewhere = new Set(
    all.flatMap((other) => (other === work ? [] : other.passes.batches.map((batch) => batch.setting))),
  );
  const isShared = (batch: Batch): boolean => elsewhere.has(batch.setting);
  // Of the settings of one kind that no other layer has, two are enough: one to come first and one to come last.
  const perKind = new Map<string, number>();
  const ends = batches.filter((batch) => {
    const seen = perKind.get(kindOf(batch)) ?? 0;
    if (isShared(batch)) return true;
    perKind.set(kindOf(batch), seen + 1);
    return seen < 2;
  });
  const found: Candidate[] = [];
  const add = (first: Batch, last: Batch, pass: Pass | undefined, changes: number) => {
    if (pass !== undefined) found.push({ pass, changes, first, last });
  };
  for (const first of ends) {
    for (const last of ends) add(first, last, passes.through(first, last), batches.length - 1);
    if (isShared(first) && batches.length > 1) add(first, first, passes.around(first), batches.length);
  }
  return found;
}
