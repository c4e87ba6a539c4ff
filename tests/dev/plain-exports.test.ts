import { expect, test } from 'vitest';
import { plainExports } from '../../src/dev/plain-exports.ts';

const getter = (name: string, value: string): string =>
  `Object.defineProperty(exports,\`${name}\`,{enumerable:!0,get:function(){return ${value}}})`;

test('values are handed over, and all else stays as it was', () => {
  const code = (first: string, second: string): string =>
    `var a=1,b=()=>a;${first},${second};exports.c=b,Object.defineProperty(exports,Symbol.toStringTag,{value:\`Module\`});var s="exports"`;
  expect(plainExports('a.js', code(getter('x', 'a'), getter('$y', 'b')))).toBe(code('exports.x=a', 'exports.$y=b'));
});

test('what only looks like it stays', () => {
  const others = [
    'var text=`Object.defineProperty(exports,\\`x\\`,{enumerable:!0,get:function(){return a}})`',
    'Object.defineProperty(target,`x`,{enumerable:!0,get:function(){return a}})',
    'Object.defineProperty(exports,`x`,{enumerable:!0,get:function(){return a()}})',
  ];
  for (const code of others) expect(plainExports('a.js', code)).toBe(code);
});
