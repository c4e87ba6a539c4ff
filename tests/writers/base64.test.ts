import fc from 'fast-check';
import { expect, it } from 'vitest';
import { base64 } from '../../src/writers/svg/base64.ts';

it('bytes are written in base64 as the platform does, whatever is left over at the end', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 40 }), (bytes) => {
      expect(base64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
    }),
  );
  expect(base64(new TextEncoder().encode('Mat'))).toBe('TWF0');
});
