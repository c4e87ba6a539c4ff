import { describe, expect, it } from 'vitest';
import { error } from '../../src/problems/problem.ts';
import { accepted, HERON, read, SHOP } from '../job/texts.ts';

const { locate } = accepted(read(HERON, SHOP));
const place = (path: readonly (string | number)[], code = 'a-b') => {
  const [{ line, column, file }] = locate([error(code, path, 'm')]) as [ReturnType<typeof locate>[number]];
  return [file, line, column];
};

describe('locate', () => {
  it.each<[readonly (string | number)[], number, number]>([
    [[], 1, 1],
    [['title'], 1, 8],
    [['mat', 'outer'], 5, 10],
    [['mat', 'weighting', 'add'], 6, 20],
    [['mat', 'layers', 0], 8, 7],
    [['mat', 'layers', 1, 'reveal'], 9, 32],
    [['openings', 0, 'artwork'], 12, 14],
    [['print', 'transfer'], 17, 57],
  ])('finds the value at %j', (path, line, column) => {
    expect(place(path)).toStrictEqual(['jobs/heron.yaml', line, column]);
  });

  it('takes the nearest that is there above what is not', () => {
    expect(place(['mat', 'border', 'left'])).toStrictEqual(['jobs/heron.yaml', 5, 3]);
    expect(place(['mat', 'layers', 7, 'board'])).toStrictEqual(['jobs/heron.yaml', 8, 5]);
    expect(place(['mat', 'layers', 1, 'bevel', 'angle'])).toStrictEqual(['jobs/heron.yaml', 9, 7]);
    expect(place(['mat', 'outer', 0])).toStrictEqual(['jobs/heron.yaml', 5, 10]);
    expect(place(['nothing'])).toStrictEqual(['jobs/heron.yaml', 1, 1]);
    expect(place(['mat', 'constructor', 'x'])).toStrictEqual(['jobs/heron.yaml', 5, 3]);
  });

  it('points at the key where that is what is wrong', () => {
    expect(place(['mat', 'outer'], 'key-unknown')).toStrictEqual(['jobs/heron.yaml', 5, 3]);
  });

  it('leaves alone what has its place', () => {
    const placed = { ...error('a-b', ['title'], 'm'), file: 'shop.yaml', line: 3, column: 4 };
    expect(locate([placed])).toStrictEqual([placed]);
  });

  it('counts lines and columns as editors do', () => {
    const text = 'title: "é🪶"\r\n# one\r\nmat: {border: "3"}\r\nopenings: [{}]';
    const found = accepted(read(text)).locate([error('a', ['title'], 'm'), error('b', ['mat', 'border'], 'm')]);
    expect(found.map(({ line, column }) => [line, column])).toStrictEqual([
      [1, 8],
      [3, 15],
    ]);
  });
});
