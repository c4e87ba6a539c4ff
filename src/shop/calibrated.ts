import { find, type Node } from '../read/text/node.ts';
import { readText } from '../read/text/text.ts';
import { type Calibrated, COUPONS } from './readings/readings.ts';

/** What a shop's file says itself, where the model has a default in its place as well. */
export interface CalibrationState {
  /** Printers whose x and y were given. */
  readonly printers: ReadonlySet<string>;
  /** Whether a and b of the guide were given. */
  readonly guide: boolean;
  /** Heads whose start and stop were given. */
  readonly heads: ReadonlySet<string>;
  /** Heads whose overrun was given. */
  readonly overruns: ReadonlySet<string>;
  /** Machines whose overrun was given. */
  readonly machineOverruns: ReadonlySet<string>;
}

const NOTHING: CalibrationState = {
  printers: new Set(),
  guide: false,
  heads: new Set(),
  overruns: new Set(),
  machineOverruns: new Set(),
};

/** Of a text that `readShop` takes; of no text, or one that is no document, nothing. */
export function calibrationState(text: string | undefined, file = 'shop.yaml'): CalibrationState {
  const read = text === undefined ? undefined : readText(text, file);
  if (read?.ok !== true) return NOTHING;
  const { root } = read.value.source;
  const has = (path: readonly string[], keys: readonly string[]) =>
    keys.every((key) => find(root, [...path, key]).whole);
  const names = (section: string, keys: readonly string[]) =>
    new Set(keysOf(find(root, [section]).node, section, root).filter((name) => has([section, name], keys)));
  return {
    printers: names('printers', ['x', 'y']),
    guide: has(['guide'], ['a', 'b']),
    heads: names('heads', ['start', 'stop']),
    overruns: names('heads', ['overrun']),
    machineOverruns: names('machines', ['overrun']),
  };
}

function keysOf(node: Node, section: string, root: Node): readonly string[] {
  return find(root, [section]).whole && node.kind === 'map' ? [...node.entries.keys()] : [];
}

/** What has to be calibrated before `what`, and was not yet, in plain words: first the printer, then the guide, then a head. A machine needs none of them. */
export function notYet(what: Calibrated, state: CalibrationState): readonly string[] {
  if (what === 'printer' || COUPONS.some((coupon) => coupon === what)) return [];
  return [
    ...(state.printers.size === 0 ? ['the printer'] : []),
    ...(what === 'head' && !state.guide ? ['the guide'] : []),
  ];
}
