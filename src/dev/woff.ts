import { deflateSync } from 'node:zlib';

/** A TrueType font as WOFF 1.0 (W3C, 2012): the same tables, each deflated where that makes it smaller. */
export function woff(font: Buffer): Buffer {
  const count = font.readUInt16BE(4);
  const tables = Array.from({ length: count }, (_, i) => {
    const at = 12 + 16 * i;
    const [offset, length] = [font.readUInt32BE(at + 8), font.readUInt32BE(at + 12)];
    const plain = font.subarray(offset, offset + length);
    const packed = deflateSync(plain, { level: 9 });
    const data = packed.length < plain.length ? packed : plain;
    return { tag: font.subarray(at, at + 4), checksum: font.subarray(at + 4, at + 8), length, data };
  });
  const directory = Buffer.alloc(20 * count);
  let end = 44 + directory.length;
  const parts: Buffer[] = [];
  tables.forEach(({ tag, checksum, length, data }, i) => {
    tag.copy(directory, 20 * i);
    directory.writeUInt32BE(end, 20 * i + 4);
    directory.writeUInt32BE(data.length, 20 * i + 8);
    directory.writeUInt32BE(length, 20 * i + 12);
    checksum.copy(directory, 20 * i + 16);
    const padded = Buffer.alloc(padding(data.length));
    parts.push(data, padded);
    end += data.length + padded.length;
  });
  const size = 12 + 16 * count + tables.reduce((sum, { length }) => sum + length + padding(length), 0);
  const header = Buffer.alloc(44);
  header.write('wOFF', 0, 'latin1');
  font.copy(header, 4, 0, 4);
  header.writeUInt32BE(end, 8);
  header.writeUInt16BE(count, 12);
  header.writeUInt32BE(size, 16);
  header.writeUInt16BE(1, 20);
  return Buffer.concat([header, directory, ...parts]);
}

/** Tables begin at multiples of four. */
const padding = (length: number): number => (4 - (length % 4)) % 4;
