import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import type { Raster } from '../../src/dev/render.ts';

/** PDF readers that stand outside the project and are asked only where they are installed. */
export interface OtherReader {
  readonly name: string;
  readonly installed: boolean;
  /** The first page. */
  readonly render: (bytes: Uint8Array, dpi: number) => Raster;
}

function installed(program: string, flag: string): boolean {
  try {
    execFileSync(program, [flag], { stdio: 'ignore' });
    return true;
  } catch (problem) {
    // It is there where it ran at all, whatever it thinks of the flag.
    return (problem as { code?: string }).code !== 'ENOENT';
  }
}

const renderer =
  (program: string, argumentsFor: (dpi: number, input: string, output: string) => readonly string[]) =>
  (bytes: Uint8Array, dpi: number): Raster => {
    const folder = mkdtempSync(join(tmpdir(), 'pdf-'));
    try {
      const [input, output] = [join(folder, 'in.pdf'), join(folder, 'out.png')];
      writeFileSync(input, bytes);
      execFileSync(program, argumentsFor(dpi, input, output), { stdio: 'ignore' });
      const { width, height, data } = PNG.sync.read(readFileSync(output));
      return { width, height, rgba: data };
    } finally {
      rmSync(folder, { recursive: true });
    }
  };

export const OTHER_READERS: readonly OtherReader[] = [
  {
    name: 'poppler',
    installed: installed('pdftoppm', '-v'),
    render: renderer('pdftoppm', (dpi, input, output) => [
      ...['-r', String(dpi), '-png', '-f', '1', '-singlefile'],
      input,
      output.replace(/\.png$/, ''),
    ]),
  },
  {
    name: 'MuPDF',
    installed: installed('mutool', '-v'),
    render: renderer('mutool', (dpi, input, output) => ['draw', '-r', String(dpi), '-o', output, input, '1']),
  },
];
