import type { Drawing, Group } from '../drawing/model.ts';

/** The groups of these names, in the drawing's order; a name that no group has is a mistake of the program and throws. */
export function namedGroups(drawing: Drawing, names: readonly string[]): readonly Group[] {
  for (const name of names) {
    if (!drawing.groups.some((group) => group.name === name)) {
      throw new TypeError(`no group is named ${JSON.stringify(name)}`);
    }
  }
  return drawing.groups.filter((group) => names.includes(group.name));
}
