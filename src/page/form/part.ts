import { type ComponentChild, type ComponentChildren, h } from 'preact';

export interface PartOf {
  readonly title: string;
  readonly open: boolean;
  readonly children?: ComponentChildren;
}

/** A part of the form; the browser's own element opens and closes it. */
export function Part({ title, open, children }: PartOf): ComponentChild {
  return h('details', { class: 'part', open }, [
    h('summary', { key: 'title' }, h('h2', {}, title)),
    h('div', { key: 'fields', class: 'fields' }, children),
  ]);
}
