import { type PDFContext, PDFHexString, type PDFObject, type PDFRef } from 'pdf-lib';
import type { Layer } from '../../drawing/document.ts';

/** One optional content group for each layer of a document, and the names that content calls them by. */
export interface WrittenLayers {
  /** What the catalog says under /OCProperties; left out where there are none. */
  readonly properties?: PDFObject;
  /** What resources say under /Properties. */
  readonly names: Readonly<Record<string, PDFRef>>;
  /** What content calls the layer of a group; undefined for a group that belongs to none. */
  readonly nameOf: (group: string) => string | undefined;
}

/**
 * Optional content (ISO 32000-1, 8.11). The default states stand in /OFF alone. A group has no /Usage: with one, some
 * readers follow its events and not the default configuration.
 */
export function writeLayers(context: PDFContext, layers: readonly Layer[]): WrittenLayers {
  const written = layers.map(({ name, label, shown }, i) => ({
    name,
    shown,
    called: `G${i + 1}`,
    ref: context.register(context.obj({ Type: 'OCG', Name: PDFHexString.fromText(label) })),
  }));
  const refs = written.map(({ ref }) => ref);
  const called = new Map(written.map((layer) => [layer.name, layer.called]));
  const properties = context.obj({
    OCGs: refs,
    D: {
      Name: PDFHexString.fromText('Default'),
      BaseState: 'ON',
      OFF: written.flatMap(({ shown, ref }) => (shown ? [] : [ref])),
      Order: refs,
    },
  });
  return {
    ...(refs.length === 0 ? {} : { properties }),
    names: Object.fromEntries(written.map((layer) => [layer.called, layer.ref])),
    nameOf: (group) => called.get(group),
  };
}
