import * as defaults from '../shop/defaults.ts';
import type { Units } from '../units/units.ts';
import type { JobInput } from './job-schema.ts';
import type { LetteringRequest } from './lettering.ts';
import { placeFrom } from './resolve-openings.ts';

/** A tenth of the height holds letters apart that the font sets close together (common practice, no source). */
const SPACING = 1 / 10;

export function letteringFrom(given: JobInput['lettering'], units: Units): readonly LetteringRequest[] | undefined {
  return given?.map((each) => ({
    text: each.text,
    weight: each.weight ?? 'bold',
    height: each.height,
    spacing: each.spacing ?? each.height * SPACING,
    bridge: each.bridge ?? defaults.bridge(units),
    islands: each.islands ?? 'bridge',
    edge: each.edge ?? 'square',
    place: placeFrom(each.place) ?? {},
  }));
}
