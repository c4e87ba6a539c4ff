import { decodePDFRawStream, PDFArray, PDFDict, PDFDocument, PDFName, PDFRawStream, PDFRef } from 'pdf-lib';

/** What lies in the file itself, for checks that no reader answers. */
export interface Objects {
  /** Every content stream, decoded: forms first as they come, then pages. */
  readonly contents: readonly string[];
  readonly catalog: { readonly [key: string]: Plain };
  /** PostScript names of the embedded font files' descriptors. */
  readonly fonts: readonly string[];
  readonly pages: readonly { readonly mediaBox: readonly number[]; readonly keys: readonly string[] }[];
  /** How many objects of this subtype there are. */
  count(subtype: string): number;
}

/** Dictionaries as records, everything else as it is written: `/Name`, `true`, `12.5`. References are followed twice. */
export type Plain = string | readonly Plain[] | { readonly [key: string]: Plain };

export async function openObjects(bytes: Uint8Array): Promise<Objects> {
  const file = await PDFDocument.load(bytes, { updateMetadata: false });
  const objects = file.context.enumerateIndirectObjects().map(([, object]) => object);
  const dicts = objects.map((object) => (object instanceof PDFRawStream ? object.dict : object));
  const named = (dict: unknown, key: string): string | undefined =>
    dict instanceof PDFDict ? dict.get(PDFName.of(key))?.toString() : undefined;
  const isContent = (stream: PDFRawStream): boolean =>
    named(stream.dict, 'Subtype') === '/Form' || pageContents.has(stream);
  const pageContents = new Set(file.getPages().map((page) => page.node.Contents()));
  const plain = (value: unknown, depth: number): Plain => {
    if (value instanceof PDFRef) return depth > 0 ? plain(file.context.lookup(value), depth - 1) : value.toString();
    if (value instanceof PDFDict) {
      return Object.fromEntries(value.entries().map(([key, of]) => [key.decodeText(), plain(of, depth)]));
    }
    return value instanceof PDFArray ? value.asArray().map((of) => plain(of, depth)) : String(value);
  };
  return {
    contents: objects
      .filter((object): object is PDFRawStream => object instanceof PDFRawStream && isContent(object))
      .map((stream) => Buffer.from(decodePDFRawStream(stream).decode()).toString('latin1')),
    catalog: plain(file.catalog, 2) as { readonly [key: string]: Plain },
    fonts: dicts.flatMap((dict) => (named(dict, 'Type') === '/FontDescriptor' ? [named(dict, 'FontName')!] : [])),
    pages: file.getPages().map((page) => ({
      mediaBox: page.node
        .MediaBox()
        .asArray()
        .map((side) => Number(side.toString())),
      keys: page.node.keys().map((key) => key.decodeText()),
    })),
    count: (subtype) => dicts.filter((dict) => named(dict, 'Subtype') === `/${subtype}`).length,
  };
}
