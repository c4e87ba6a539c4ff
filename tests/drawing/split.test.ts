import { describe, expect, it } from 'vitest';
import { type Document, type Page, splitDocument } from '../../src/drawing/document.ts';

const page = (name: string, title?: string): Page => ({
  paper: { width: 10, height: 10 },
  scale: { x: 1, y: 1 },
  name,
  label: name,
  ...(title === undefined ? {} : { outline: [title, name] }),
  frames: [],
});
const document = (...pages: readonly Page[]): Document => ({
  title: 'D',
  subject: '',
  language: 'en',
  layers: [],
  pages,
});
const names = (parts: readonly Document[]) => parts.map(({ pages }) => pages.map(({ name }) => name).join(''));

describe('a document in parts', () => {
  const three = document(page('a', 'one'), page('b'), page('c', 'two'), page('d', 'two'), page('e', 'three'));

  it('ends each where something else begins', () => {
    expect(names(splitDocument(three, 3))).toEqual(['ab', 'cde']);
    expect(names(splitDocument(three, 4))).toEqual(['abcd', 'e']);
  });

  it('is itself where it is short enough, and parted anywhere where one thing is longer', () => {
    expect(splitDocument(three, 5)[0]).toBe(three);
    expect(names(splitDocument(document(page('a', 'one'), ...'bcdef'.split('').map((name) => page(name))), 2))).toEqual(
      ['ab', 'cd', 'ef'],
    );
    expect(splitDocument(document(), 2)).toHaveLength(1);
  });
});
