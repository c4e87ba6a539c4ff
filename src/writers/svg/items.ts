import { create, Element } from '@svgdotjs/svg.js';
import { penOf } from '../../drawing/bounds.ts';
import type { Item, LineItem, PathItem, Pen, PictureItem, TextItem } from '../../drawing/model.ts';
import { textWidth } from '../../fonts/measure.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Pictures } from '../../pictures/model.ts';
import { hexColour } from '../colour.ts';
import { decimal } from '../decimal.ts';
import { pathData } from '../path-data.ts';
import { base64 } from './base64.ts';
import { lettersData } from './letters.ts';
import { type Attributes, paintOf, strokeOf } from './paint.ts';

/** User units are mm; four digits are 0.00005 mm. */
export const mm = (value: number): string => decimal(value, 4);

export interface Setting {
  readonly pens: Readonly<Record<string, Pen>>;
  readonly fonts: Fonts;
  /** As in `SvgOptions`. */
  readonly family: string | undefined;
  readonly pictures: Pictures | undefined;
  /** Ids given so far: an id may stand once in a file, so a second one is left out. */
  readonly ids: Set<string>;
}

/** An item as one element with plain attributes, no styles and no transformation; none where nothing of it is drawn. */
export function itemElement(item: Item, setting: Setting): Element | undefined {
  switch (item.kind) {
    case 'line':
      return element('line', item.id, lineAttributes(item, setting), setting);
    case 'path':
      return element('path', item.id, pathAttributes(item, setting), setting);
    case 'text':
      return textElement(item, setting);
    case 'picture':
      return element('image', undefined, pictureAttributes(item, setting), setting);
    default: {
      const never: never = item;
      throw new TypeError(`unknown item ${JSON.stringify(never)}`);
    }
  }
}

function element(name: string, id: string | undefined, attributes: Attributes, setting: Setting): Element {
  const named = id !== undefined && !setting.ids.has(id);
  if (named) setting.ids.add(id);
  // The library would write numbers with all of their digits: it gets words only.
  return new Element(create(name)).attr(named ? { id, ...attributes } : attributes);
}

function lineAttributes({ from, to, pen }: LineItem, { pens }: Setting): Attributes {
  return { x1: mm(from.x), y1: mm(from.y), x2: mm(to.x), y2: mm(to.y), ...strokeOf(penOf(pen, pens), mm) };
}

/** In the file itself, stretched to its box; one that the file does not have is a mistake of the program and throws. */
function pictureAttributes({ picture, box }: PictureItem, { pictures }: Setting): Attributes {
  const found = pictures?.[picture];
  if (found === undefined) throw new TypeError(`no picture is named ${JSON.stringify(picture)}`);
  return {
    x: mm(box.x),
    y: mm(box.y),
    width: mm(box.width),
    height: mm(box.height),
    preserveAspectRatio: 'none',
    href: `data:image/jpeg;base64,${base64(found.jpeg)}`,
  };
}

function pathAttributes(item: PathItem, { pens }: Setting): Attributes {
  return { d: item.paths.map((path) => pathData(path, { number: mm })).join(''), ...paintOf(item, pens, mm) };
}

function textElement(item: TextItem, setting: Setting): Element | undefined {
  const { family } = setting;
  if (family === undefined) {
    const attributes = outlinedText(item, setting);
    return attributes.d === '' ? undefined : element('path', item.id, attributes, setting);
  }
  const width = textWidth(item.text, item.weight, item.size, setting.fonts);
  if (width === 0) return undefined;
  const text = element('text', item.id, liveText(item, width, family), setting);
  // A reader makes one space of several, and drops those at the ends.
  return text.words(item.text.replaceAll(/^ | (?= )| $/g, '\u00a0'));
}

/** As wide as it was measured, whatever is made of the family where it is shown. */
function liveText({ at, anchor, size, weight, colour, turn }: TextItem, width: number, family: string): Attributes {
  const [x, y] = [mm(at.x), mm(at.y)];
  return {
    x,
    y,
    ...(turn === 0 ? {} : { transform: `rotate(${decimal(turn, 6)} ${x} ${y})` }),
    'font-family': family,
    'font-size': mm(size),
    ...(weight === 'bold' ? { 'font-weight': 'bold' } : {}),
    ...(anchor === 'start' ? {} : { 'text-anchor': anchor }),
    textLength: mm(width),
    fill: hexColour(colour),
  };
}

/** Letters as outlines, so that they are the same on every machine and can be cut; the words stay readable in a label. */
function outlinedText(item: TextItem, { fonts }: Setting): Attributes {
  return {
    role: 'img',
    'aria-label': item.text,
    d: lettersData(item, fonts),
    fill: hexColour(item.colour),
  };
}
