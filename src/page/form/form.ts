import { type ComponentChild, h } from 'preact';
import { Borders } from './borders.ts';
import { Changes } from './changes.ts';
import { Layers } from './layers.ts';
import { Lettering } from './lettering.ts';
import { More } from './more.ts';
import { Openings } from './openings.ts';
import { Outside } from './outside.ts';
import { Unplaced } from './told.ts';

/** All that a piece says, in the order in which one would say it. */
export function Form(): ComponentChild {
  return h('form', { class: 'form', 'aria-label': 'The piece', onSubmit: (event: Event) => event.preventDefault() }, [
    h(Unplaced, { key: 'unplaced' }),
    h(Outside, { key: 'outside' }),
    h(Borders, { key: 'borders' }),
    h(Openings, { key: 'openings' }),
    h(Layers, { key: 'layers' }),
    h(Lettering, { key: 'lettering' }),
    h(More, { key: 'more' }),
    h(Changes, { key: 'changes' }),
  ]);
}
