import { type PDFContext, PDFHexString, type PDFObject, type PDFRef } from 'pdf-lib';
import type { Group } from '../drawing/model.ts';

/** One optional content group for each group of the drawing, and the names that the form's content calls them by. */
export interface Layers {
  /** What the catalog says under /OCProperties. */
  readonly properties: PDFObject;
  /** What the form's resources say under /Properties. */
  readonly names: Readonly<Record<string, PDFRef>>;
  /** Name of a group, by its place in the drawing. */
  readonly nameOf: (index: number) => string;
}

/**
 * Optional content (ISO 32000-1, 8.11). The default states stand in /OFF alone. A group has no /Usage: with one, some
 * readers follow its events and not the default configuration.
 */
export function writeLayers(context: PDFContext, groups: readonly Group[]): Layers {
  const refs = groups.map((group) =>
    context.register(context.obj({ Type: 'OCG', Name: PDFHexString.fromText(group.label) })),
  );
  const nameOf = (index: number): string => `G${index + 1}`;
  const properties = context.obj({
    OCGs: refs,
    D: {
      Name: PDFHexString.fromText('Default'),
      BaseState: 'ON',
      OFF: refs.filter((_, i) => !groups[i]!.shown),
      Order: refs,
    },
  });
  return { properties, names: Object.fromEntries(refs.map((ref, i) => [nameOf(i), ref])), nameOf };
}
