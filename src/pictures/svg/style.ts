import type { Unreadable } from '../model.ts';
import { colourOf } from './colours.ts';
import { broken, type Element } from './markup.ts';

/** How an area is painted, as far as it is handed on from element to element. */
export interface Paint {
  /** `#rrggbb`; undefined where nothing is filled. */
  readonly fill: string | undefined;
  readonly rule: 'nonzero' | 'evenodd';
  /** What `currentColor` is. */
  readonly colour: string;
  /** Whether its line would be drawn. */
  readonly stroked: boolean;
  readonly hidden: boolean;
}

export const PAINT: Paint = { fill: '#000000', rule: 'nonzero', colour: '#000000', stroked: false, hidden: false };

/** Declarations by the name of a class. */
export type Classes = ReadonlyMap<string, ReadonlyMap<string, string>>;

const declarations = (text: string): readonly (readonly [string, string])[] =>
  text.split(';').flatMap((part) => {
    const [name, ...value] = part.split(':');
    return value.length === 0 ? [] : [[name!.trim(), value.join(':').replace('!important', '').trim()] as const];
  });

/** Sheets of the plainest kind: classes, several with commas between. Throws `mark-svg`. */
export function classesOf({ text, line }: Element): Classes {
  const classes = new Map<string, Map<string, string>>();
  const rules = withoutComments(text).split('}');
  const unfinished = rules.pop()!;
  for (const rule of rules) {
    const [selectors = '', own, ...others] = rule.split('{');
    const names = selectors.split(',').map((name) => /^\s*\.([\w-]{1,80})\s*$/.exec(name)?.[1]);
    if (own === undefined || others.length > 0 || names.includes(undefined)) throw notPlain(line);
    for (const name of names) {
      const known = classes.get(name!) ?? new Map<string, string>();
      for (const [key, value] of declarations(own)) known.set(key, value);
      classes.set(name!, known);
    }
  }
  if (unfinished.trim() !== '') throw notPlain(line);
  return classes;
}

const withoutComments = (text: string): string => {
  const [first = '', ...others] = text.split('/*');
  return [first, ...others.map((part) => part.split('*/').slice(1).join('*/'))].join('');
};

const notPlain = (line: number): Unreadable =>
  broken(line, 'its style sheet has more than plain classes', 'save it with presentation attributes');

/** What cannot be shown in plain areas, and what to do about it. */
const REFUSED: Readonly<Record<string, string>> = {
  'clip-path': 'cut the areas to what is seen',
  mask: 'cut the areas to what is seen',
  filter: 'take the effect out',
};
const OPACITIES = ['opacity', 'fill-opacity'];

/** The paint of an element in one that has `outer`. Throws `mark-svg`. */
export function paintOf(element: Element, outer: Paint, classes: Classes): Paint {
  const { attributes, line, name } = element;
  const own = new Map(attributes);
  for (const each of (attributes.get('class') ?? '').split(/\s+/))
    for (const [key, value] of classes.get(each) ?? []) own.set(key, value);
  for (const [key, value] of declarations(attributes.get('style') ?? '')) own.set(key, value);
  for (const [key, hint] of Object.entries(REFUSED)) {
    if ((own.get(key) ?? 'none') !== 'none') throw broken(line, `<${name}> has a ${key}, which is not read`, hint);
  }
  for (const key of OPACITIES) {
    const share = own.get(key)?.replace('%', 'e-2');
    if (share !== undefined && Number(share) !== 1)
      throw broken(line, `<${name}> is see-through (${key})`, 'give it the colour that is seen');
  }
  const { colour = outer.colour } = { colour: colourOf(own.get('color') ?? '') };
  const width = own.get('stroke-width');
  const stroke = own.get('stroke');
  return {
    fill: fillOf(own.get('fill'), outer.fill, colour, element),
    rule: ruleOf(own.get('fill-rule')) ?? outer.rule,
    colour,
    stroked: stroke === undefined ? outer.stroked : stroke !== 'none' && Number.parseFloat(width ?? '1') !== 0,
    hidden: outer.hidden || own.get('display') === 'none' || own.get('visibility') === 'hidden',
  };
}

const ruleOf = (text: string | undefined): Paint['rule'] | undefined =>
  text === 'nonzero' || text === 'evenodd' ? text : undefined;

function fillOf(
  text: string | undefined,
  outer: string | undefined,
  colour: string,
  { line, name }: Element,
): string | undefined {
  if (text === undefined || text === 'inherit') return outer;
  if (text === 'none' || text === 'transparent') return undefined;
  if (text === 'currentColor') return colour;
  const found = colourOf(text);
  if (found === undefined)
    throw broken(
      line,
      `<${name}> is filled with ${text.slice(0, 40)}, which is not read`,
      'fill it with one colour, written as #rrggbb',
    );
  return found;
}
