import type { Drawing } from '../../src/drawing/model.ts';

/** A nanometre in mm: a thousandth of what any writer rounds to, and far above what arithmetic leaves behind. */
const STEP = 1e6;

/** Keys in the order of the alphabet; numbers to the nanometre; what is undefined is left out. */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(', ')}]`;
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new TypeError(`${value} has no place in a reference`);
    return String(Math.round(value * STEP) / STEP + 0);
  }
  if (value === null || typeof value !== 'object') return JSON.stringify(value);
  const fields = Object.entries(value)
    .filter(([, field]) => field !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${fields.map(([key, field]) => `${JSON.stringify(key)}: ${canonical(field)}`).join(', ')}}`;
}

const list = (items: readonly unknown[], indent: string): string =>
  items.length === 0 ? '[]' : `[\n${items.map((item) => `${indent}  ${canonical(item)}`).join(',\n')}\n${indent}]`;

/** A drawing as JSON with one item a line, so that a difference shows the item and its millimetres. */
export function canonicalDrawing(drawing: Drawing): string {
  const { groups, pens, ...head } = drawing;
  const penLines = Object.entries(pens)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, pen]) => `    ${JSON.stringify(name)}: ${canonical(pen)}`);
  const groupLines = groups.map(
    ({ items, ...group }) => `    {"group": ${canonical(group)}, "items": ${list(items, '    ')}}`,
  );
  const parts = [
    `  "head": ${canonical(head)}`,
    `  "pens": {\n${penLines.join(',\n')}\n  }`,
    `  "groups": [\n${groupLines.join(',\n')}\n  ]`,
  ];
  return `{\n${parts.join(',\n')}\n}\n`;
}

/** Any plain data as JSON, one line a leaf or short list. */
export function canonicalJson(value: unknown, indent = ''): string {
  const flat = canonical(value);
  if (flat.length + indent.length <= 120 || value === null || typeof value !== 'object') return flat;
  const deeper = `${indent}  `;
  if (Array.isArray(value))
    return `[\n${value.map((item) => deeper + canonicalJson(item, deeper)).join(',\n')}\n${indent}]`;
  const fields = Object.entries(value)
    .filter(([, field]) => field !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1));
  const lines = fields.map(([key, field]) => `${deeper}${JSON.stringify(key)}: ${canonicalJson(field, deeper)}`);
  return `{\n${lines.join(',\n')}\n${indent}}`;
}
