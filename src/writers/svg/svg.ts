import { create, Element, G, getWindow, registerWindow, SVG, type Svg } from '@svgdotjs/svg.js';
import { type Document, type Frame, type Page, shownPart } from '../../drawing/document.ts';
import type { Drawing, Group } from '../../drawing/model.ts';
import { touches } from '../../drawing/touches.ts';
import type { Fonts } from '../../fonts/model.ts';
import type { Box } from '../../geometry/box.ts';
import type { Size } from '../../geometry/point.ts';
import type { Pictures } from '../../pictures/model.ts';
import { decimal } from '../decimal.ts';
import { frameMatrix, isInPlace } from '../frame-matrix.ts';
import { namedGroups, shownLayers } from '../shown.ts';
import { itemElement, mm, type Setting } from './items.ts';
import type { SvgWindow } from './window.ts';
import { type Adding, type Xml, xmlBytes, xmlText } from './xml.ts';

export interface SvgOptions {
  /** Names of the groups to show; those that are shown by default unless given. */
  readonly show?: readonly string[];
  /** With their outlines, where no family is named. */
  readonly fonts: Fonts;
  /**
   * Letters as text, in a family of fonts of this name that the one who shows it provides: for the screen, small and fast.
   * Without it letters are outlines, the same on every machine, and can be cut.
   */
  readonly family?: string;
  /** By the names that the items give them. */
  readonly pictures?: Pictures;
  /** Remarks, a line each. */
  readonly comment?: readonly string[];
}

/** Whether there is a document to build trees in. */
export const hasWindow = (): boolean => getWindow() !== null;

/** Trees are built in this window from now on, unless they are already. */
export function buildIn(window: SvgWindow): void {
  if (getWindow() !== window) registerWindow(window, window.document);
}

/**
 * A drawing as SVG 1.1: width and height in mm, the viewBox numerically the same from 0 0, every group an element with
 * its name as id. Groups that are not shown are left out, since programs that drive machines often cut what is hidden.
 * The same drawing gives the same text.
 */
export const writeSvg = (drawing: Drawing, options: SvgOptions): string => xmlText(svgOf(drawing, options));

/** The same in UTF-8, as a file has it. */
export const encodeSvg = (drawing: Drawing, options: SvgOptions): Uint8Array => xmlBytes(svgOf(drawing, options));

function svgOf(drawing: Drawing, options: SvgOptions): Adding {
  const canvas = emptySvg(drawing, drawing.title);
  if (options.comment !== undefined) canvas.element('desc').words(options.comment.join('\n'));
  const setting = settingOf(drawing, options, new Set());
  return whole(canvas, (xml) => {
    for (const group of shownGroups(drawing, options)) addGroup(xml, group, setting);
  });
}

/**
 * One page as SVG, as large as its paper: its frames clipped, turned, placed and corrected as on the page of the PDF.
 * Items that a frame does not show are left out.
 */
export const writePageSvg = (document: Document, page: Page, options: SvgOptions): string =>
  xmlText(pageSvgOf(document, page, options));

/** The same in UTF-8, as a file has it. */
export const encodePageSvg = (document: Document, page: Page, options: SvgOptions): Uint8Array =>
  xmlBytes(pageSvgOf(document, page, options));

function pageSvgOf(document: Document, page: Page, options: SvgOptions): Adding {
  const canvas = emptySvg(page.paper, `${document.title}, ${page.name}`);
  const ids = new Set<string>();
  const { x, y } = page.scale;
  const sheet = new G();
  if (x !== 1 || y !== 1) sheet.attr({ transform: `scale(${decimal(1 / x, 9)} ${decimal(1 / y, 9)})` });
  const isShown = shownLayers(document, options.show);
  return whole(canvas, (xml) => {
    within(xml, sheet, () => {
      for (const frame of page.frames) addFrame(xml, frame, frame.drawing.groups.filter(isShown), options, ids);
    });
  });
}

/** What a frame shows of some groups. */
function addFrame(xml: Xml, frame: Frame, groups: readonly Group[], options: SvgOptions, ids: Set<string>): void {
  const { drawing } = frame;
  const setting = settingOf(drawing, options, ids);
  const part = shownPart(frame);
  const add = (): void => {
    for (const group of groups) {
      const items =
        frame.clip === undefined
          ? group.items
          : group.items.filter((item) => touches(item, part, drawing.pens, options.fonts));
      if (items.length > 0) addGroup(xml, { ...group, items }, setting);
    }
  };
  if (isInPlace(frame)) add();
  else within(xml, windowOf(xml, frame, ids), add);
}

const settingOf = (
  { pens }: Pick<Setting, 'pens'>,
  { fonts, family, pictures }: SvgOptions,
  ids: Set<string>,
): Setting => ({ pens, fonts, family, pictures, ids });

function shownGroups(drawing: Drawing, { show }: SvgOptions): readonly Group[] {
  return show === undefined ? drawing.groups.filter((group) => group.shown) : namedGroups(drawing, show);
}

function emptySvg({ width, height }: Size, title: string): Svg {
  if (!hasWindow()) throw new Error('there is no document to build SVG in: hand one in by buildSvgIn()');
  const canvas = SVG() as Svg;
  const [w, h] = [mm(width), mm(height)];
  // Links are not used, so their namespace goes.
  canvas.attr('xmlns:xlink', null);
  canvas.attr({ width: `${w}mm`, height: `${h}mm`, viewBox: `0 0 ${w} ${h}` });
  canvas.element('title').words(`${title} (${w} × ${h} mm)`);
  return canvas;
}

/** Each item is text before the next is built: a sheet may have a hundred thousand. */
function addGroup(xml: Xml, group: Group, setting: Setting): void {
  const element = new G();
  if (!setting.ids.has(group.name)) element.attr({ id: group.name });
  setting.ids.add(group.name);
  element.attr({ 'data-label': group.label });
  within(xml, element, () => {
    for (const item of group.items) {
      const made = itemElement(item, setting);
      if (made !== undefined) xml.add(made.node);
    }
  });
}

/** A group in the drawing's own mm, which shows through the frame's clip alone. */
function windowOf(xml: Xml, frame: Frame, ids: Set<string>): G {
  const { a, b, c, d, e, f } = frameMatrix(frame);
  const transform = `matrix(${[a, b, c, d, e, f].map(mm).join(' ')})`;
  if (frame.clip === undefined) return new G().attr({ transform });
  const id = addClip(xml, frame.clip, ids);
  return new G().attr({ transform, 'clip-path': `url(#${id})` });
}

function addClip(xml: Xml, { x, y, width, height }: Box, ids: Set<string>): string {
  let id = 'window';
  for (let more = 2; ids.has(id); more++) id = `window-${more}`;
  ids.add(id);
  const clip = new Element(create('clipPath')).attr({ id });
  clip.element('rect').attr({ x: mm(x), y: mm(y), width: mm(width), height: mm(height) });
  xml.add(clip.node);
  return id;
}

/** An element with what is added in between. */
function within(xml: Xml, element: Element, add: () => void): void {
  xml.open(element.node);
  add();
  xml.close(element.node.nodeName);
}

const whole =
  (canvas: Svg, add: Adding): Adding =>
  (xml) =>
    within(xml, canvas, () => add(xml));
