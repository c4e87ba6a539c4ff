import type { Document } from '../drawing/document.ts';
import type { Drawing, Group } from '../drawing/model.ts';

/** The groups of these names, in the drawing's order; a name that no group has is a mistake of the program and throws. */
export function namedGroups(drawing: Drawing, names: readonly string[]): readonly Group[] {
  for (const name of names) known(name, drawing.groups);
  return drawing.groups.filter((group) => names.includes(group.name));
}

/**
 * Which groups of a document's drawings are seen: those that are shown anyway, or of the groups of its layers those that
 * are asked for. A name that no layer has is a mistake of the program and throws.
 */
export function shownLayers(
  { layers }: Pick<Document, 'layers'>,
  names: readonly string[] | undefined,
): (group: Group) => boolean {
  if (names === undefined) return (group) => group.shown;
  for (const name of names) known(name, layers);
  const optional = new Set(layers.map(({ name }) => name));
  return (group) => (optional.has(group.name) ? names.includes(group.name) : group.shown);
}

function known(name: string, all: readonly { readonly name: string }[]): void {
  if (!all.some((each) => each.name === name)) throw new TypeError(`no group is named ${JSON.stringify(name)}`);
}
