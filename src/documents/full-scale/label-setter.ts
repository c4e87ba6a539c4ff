import type { LineItem } from '../../drawing/model.ts';
import { type Box, box, holds } from '../../geometry/box.ts';
import type { Line } from '../../geometry/clip.ts';
import { between, distance, type Point, point, type Size } from '../../geometry/point.ts';
import { defined } from '../../problems/defined.ts';
import { turnedBlock, turnedSize } from '../../text/block.ts';
import type { Places } from '../../text/places.ts';
import type { Room } from '../../text/room.ts';
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
  private beside(label: Label, lists: Iterable<Places>): PlacedLabel | undefined {
    for (const places of lists) {
      const area = this.firstFree(places);
      if (area === undefined) continue;
      const { target, alongLine = false } = label;
      const off =
        target !== undefined && (this.whole || !alongLine) && distance(nearestOf(area, target), target) > STANDS_OFF;
      return made(label, places, area, off ? this.leader(area, target) : undefined);
    }
    return undefined;
  }

  /** The first free place from which a leader finds its way. */
  private farther(label: Label, lists: Iterable<Places>): PlacedLabel | undefined {
    for (const places of lists) {
      let leader: LineItem | undefined;
      const area = this.firstFree(places, (there) => {
        leader = this.leader(there, label.target!);
        return leader !== undefined;
      });
      if (area !== undefined) return made(label, places, area, leader);
    }
    return undefined;
  }

  private firstFree({ block, rotation, spots }: Places, isGood: (area: Box) => boolean = () => true): Box | undefined {
    const size = turnedSize(block, rotation);
    const { width, height } = size;
    let found: Box | undefined;
    spots((x, y) => {
      if (!this.isWithin(x, y, size) || !this.room.isFree(x, y, width, height)) return false;
      const area = box(x, y, width, height);
      if (isGood(area)) found = area;
      return found !== undefined;
    });
    return found;
  }

  private isWithin(x: number, y: number, { width, height }: Size): boolean {
    for (const each of this.within) if (holds(each, x, y, width, height)) return true;
    return false;
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

const made = (label: Label, { block, rotation }: Places, box: Box, leader: LineItem | undefined): PlacedLabel => ({
  label,
  block: turnedBlock(block, rotation, point(box.x, box.y)),
  box,
  ...defined({ leader }),
});
