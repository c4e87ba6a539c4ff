import type { PDFContext, PDFRef } from 'pdf-lib';
import type { Pictures } from '../../pictures/model.ts';
import { streamOf } from './stream.ts';

/** The pictures of a file: each stands in it once, as the JPEG that it is (ISO 32000-1, 7.4.8 and 8.9.5). */
export interface WrittenPictures {
  /** For the resources of whatever shows them. */
  readonly objects: Readonly<Record<string, PDFRef>>;
  /** The name of one in the resources; one that the file does not have is a mistake of the program and throws. */
  readonly nameOf: (id: string) => string;
}

export function writePictures(context: PDFContext, pictures: Pictures): WrittenPictures {
  const names = new Map<string, string>();
  const objects: Record<string, PDFRef> = {};
  for (const [id, { width, height, channels, jpeg }] of Object.entries(pictures)) {
    const name = `P${names.size + 1}`;
    names.set(id, name);
    const image = streamOf(context, jpeg, {
      Type: 'XObject',
      Subtype: 'Image',
      Width: width,
      Height: height,
      ColorSpace: channels === 1 ? 'DeviceGray' : 'DeviceRGB',
      BitsPerComponent: 8,
      Filter: 'DCTDecode',
      Interpolate: true,
    });
    objects[name] = context.register(image);
  }
  const nameOf = (id: string): string => {
    const name = names.get(id);
    if (name === undefined) throw new TypeError(`no picture is named ${JSON.stringify(id)}`);
    return name;
  };
  return { objects, nameOf };
}
