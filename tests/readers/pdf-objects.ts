import { decodePDFRawStream, PDFArray, PDFDict, PDFDocument, PDFName, PDFRawStream, PDFRef } from 'pdf-lib';

/** What lies in the file itself, for checks that no reader answers. */
export interface Objects {
  /** Every content stream, decoded: forms first as they come, then pages. */
  readonly contents: readonly string[];
  readonly catalog: Plain;
  /** PostScript names of the embedded font files' descriptors. */
  readonly fonts: readonly string[];
  readonly pages: readonly { readonly mediaBox: readonly number[]; readonly keys: readonly string[] }[];
  /** How many objects of this subtype there are. */
  count(subtype: string): number;
}

/** Dictionaries as records, names as `/Name`, references followed to `depth`. */
export type Plain = string | number | boolean | null | readonly Plain[] | { readonly [key: string]: Plain };

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
    const object = value instanceof PDFRef ? (depth > 0 ? file.context.lookup(value) : undefined) : value;
    if (object instanceof PDFDict) {
      return Object.fromEntries(object.entries().map(([key, of]) => [key.decodeText(), plain(of, depth - 1)]));
    }
    if (object instanceof PDFArray) return object.asArray().map((of) => plain(of, depth - 1));
    return object === undefined ? null : (object as { toString(): string }).toString();
  };
  return {
    contents: objects
      .filter((object): object is PDFRawStream => object instanceof PDFRawStream && isContent(object))
      .map((stream) => Buffer.from(decodePDFRawStream(stream).decode()).toString('latin1')),
    catalog: plain(file.catalog, 2),
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
