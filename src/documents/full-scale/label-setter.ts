import type { LineItem } from '../../drawing/model.ts';
import { type Box, contains } from '../../geometry/box.ts';
import type { Line } from '../../geometry/clip.ts';
import { between, distance, type Point } from '../../geometry/point.ts';
import { defined } from '../../problems/defined.ts';
import { boxAt, turnedBlock, turnedSize } from '../../text/block.ts';
import type { Candidate, Room } from '../../text/room.ts';
import { nearestOf } from './candidates.ts';
import type { Label, PlacedLabel } from './label.ts';

/** Words farther from their place than this are led to it. */
const STANDS_OFF = 30;

/** Width of the pen `leader`. */
export const LEADER = 0.18;

/** Sets labels one after the other where nothing lies, each wholly within one of some areas. */
export class LabelSetter {
  readonly placed: PlacedLabel[] = [];
  /** What found no room. */
  readonly unplaced: Label[] = [];
  /** How many say less than they should. */
  short = 0;
  readonly room: Room;
  private readonly within: readonly Box[];
  /** All of the drawing is set, not what some sheets show. */
  private readonly whole: boolean;

  constructor(room: Room, within: readonly Box[], whole: boolean) {
    this.whole = whole;
    this.room = room;
    this.within = within;
  }

  set(label: Label): void {
    for (const { places, farther, short = false } of label.tries) {
      const found = this.beside(label, places()) ?? this.farther(label, farther?.() ?? []);
      if (found === undefined) continue;
      this.room.take(found.box);
      this.placed.push(found);
      if (short) this.short++;
      return;
    }
    if (label.optional !== true) this.unplaced.push(label);
  }

  /** The first place that is free, led to its target where it stands off. */
  private beside(label: Label, places: Iterable<Candidate>): PlacedLabel | undefined {
    for (const candidate of places) {
      const area = this.free(candidate);
      if (area === undefined) continue;
      const { target, alongLine = false } = label;
      const off =
        target !== undefined && (this.whole || !alongLine) && distance(nearestOf(area, target), target) > STANDS_OFF;
      return this.made(label, candidate, area, off ? this.leader(area, target) : undefined);
    }
    return undefined;
  }

  /** The first free place from which a leader finds its way. */
  private farther(label: Label, places: Iterable<Candidate>): PlacedLabel | undefined {
    for (const candidate of places) {
      const area = this.free(candidate);
      const leader = area === undefined ? undefined : this.leader(area, label.target!);
      if (leader !== undefined) return this.made(label, candidate, area!, leader);
    }
    return undefined;
  }

  private free({ block, rotation, at }: Candidate): Box | undefined {
    const area = boxAt(turnedSize(block, rotation), at);
    // Asked ten thousand times for one pattern.
    for (const each of this.within) if (contains(each, area)) return this.room.isFree(area) ? area : undefined;
    return undefined;
  }

  private made(label: Label, { block, rotation, at }: Candidate, box: Box, leader: LineItem | undefined): PlacedLabel {
    return { label, block: turnedBlock(block, rotation, at), box, ...defined({ leader }) };
  }

  /** A leader from words to where they belong, unless other words stand in its way. */
  private leader(area: Box, target: Point): LineItem | undefined {
    const near = nearestOf(area, target);
    const gap = 0.6 / Math.max(1.2, distance(target, near));
    const leader: Line = { from: between(near, target, gap), to: between(target, near, gap) };
    if (this.room.crossesWords(leader)) return undefined;
    this.room.addLine({ ...leader, half: LEADER / 2 });
    return { kind: 'line', pen: 'leader', ...leader };
  }
}
