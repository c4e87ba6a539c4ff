import type { PictureUrls } from './items.ts';

const urls = new WeakMap<Blob, string>();

/** Addresses of pictures within this page, one for each as long as it lives. */
export function pieceUrls(pictures: Readonly<Record<string, Blob>>): PictureUrls {
  return Object.fromEntries(
    Object.entries(pictures).map(([name, blob]) => {
      const known = urls.get(blob) ?? URL.createObjectURL(blob);
      urls.set(blob, known);
      return [name, known];
    }),
  );
}
