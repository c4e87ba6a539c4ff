import { type ComponentChild, h } from 'preact';
import { type Document, type Frame, type Page, shownPart } from '../../drawing/document.ts';
import { frameMatrix } from '../../writers/frame-matrix.ts';
import { seen } from '../engine/seen.ts';
import { type PictureUrls, seenElements } from './items.ts';

/** A page of a document as it comes out of the printer: frames clipped, turned, placed and corrected as in the file. */
export function pageElement(document: Document, page: Page, key: string, pictures: PictureUrls): ComponentChild {
  const { width, height } = page.paper;
  const { x, y } = page.scale;
  const correction = x === 1 && y === 1 ? {} : { transform: `scale(${1 / x} ${1 / y})` };
  return h(
    'svg',
    {
      key,
      class: 'sheet',
      width: `${width}mm`,
      height: `${height}mm`,
      viewBox: `0 0 ${width} ${height}`,
      role: 'img',
      'aria-label': `${document.title}, ${page.name}`,
    },
    h(
      'g',
      correction,
      page.frames.map((frame, i) => frameElement(frame, `${key}-${i}`, pictures)),
    ),
  );
}

function frameElement(frame: Frame, key: string, pictures: PictureUrls): ComponentChild {
  const { a, b, c, d, e, f } = frameMatrix(frame);
  const drawn = seenElements(seen(frame.drawing), pictures);
  const { x, y, width, height } = shownPart(frame);
  const clip = `clip-${key}`;
  const clipped = frame.clip !== undefined;
  return h('g', { key, transform: `matrix(${a} ${b} ${c} ${d} ${e} ${f})` }, [
    clipped ? h('clipPath', { key: 'clip', id: clip }, h('rect', { x, y, width, height })) : null,
    h('g', { key: 'drawn', ...(clipped ? { 'clip-path': `url(#${clip})` } : {}) }, drawn),
  ]);
}
