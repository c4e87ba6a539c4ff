import { describe, expect, it } from 'vitest';
import { MACHINE_KINDS, plainMachine } from '../../src/shop/machine.ts';
import { accepted, shopOf } from '../job/texts.ts';

const machine = (text: string, name: string) => accepted(shopOf(text)).machines.get(name)!;

describe('machines of a shop', () => {
  it('are of the kind that their name says, where they say none, with every default filled in', () => {
    for (const kind of MACHINE_KINDS) {
      expect(machine(`machines: {${kind}: {}}\n`, kind)).toStrictEqual(plainMachine(kind));
      expect(machine(`machines: {other: {kind: ${kind}}}\n`, 'other')).toMatchObject({ id: 'other', kind });
    }
  });

  it('have a kerf for each axis, or one for both', () => {
    expect(machine('machines: {laser: {kerf: 0.2 mm}}\n', 'laser')).toMatchObject({ kerf: { x: 0.2, y: 0.2 } });
    const text = 'units: mm\nmachines: {laser: {kerf: {x: 0.2, y: 0.15}}}\n';
    expect(machine(text, 'laser')).toMatchObject({ kerf: { x: 0.2, y: 0.15 } });
    expect(machine('machines: {laser: {}}\n', 'laser')).toMatchObject({ kerf: { x: 0, y: 0 } });
  });

  it('keep what an operation does not say', () => {
    const text = 'machines: {knife: {operations: {inner: {layer: CUT, pen: 2, speed: 40}}, bed: 24 x 48}}\n';
    const { operations, bed } = machine(text, 'knife');
    expect(operations.inner).toStrictEqual({ layer: 'CUT', colour: '#0060c0', pen: 2, speed: 40 });
    expect(operations.outer).toStrictEqual(plainMachine('knife').operations.outer);
    expect(bed).toStrictEqual({ width: expect.closeTo(609.6, 9), height: expect.closeTo(1219.2, 9) });
  });

  it('are calibrated when both offsets of a bevel head are given', () => {
    expect(machine('machines: {bevel: {start: 1 mm}}\n', 'bevel')).toMatchObject({
      calibrated: false,
      start: [{ offset: 1 }],
    });
    expect(machine('machines: {bevel: {start: 1 mm, stop: 0}}\n', 'bevel')).toMatchObject({ calibrated: true });
  });
});
