// A few small files, read before anything else can be done: the calls that wait cost less than those that come back later.
import { readFileSync } from 'node:fs';
import { basename, dirname, extname, join, resolve } from 'node:path';
import { DISK, type Found } from './files/disk.ts';
import type { Role } from './files/inputs.ts';
import { NotPlain, readPlain } from './files/plain.ts';
import { isKnown, remember } from './files/this-run.ts';
import { codeOf, reason } from './files/why.ts';
import { putInOrder } from './output/output.ts';
import { UsageError } from './usage.ts';

/** Larger files are refused unread; the reader's own limit is lower and gives the place. */
const MOST_BYTES = 4 * 1024 * 1024;

export interface SourceFile {
  /** As the user wrote it. */
  readonly file: string;
  readonly text: string;
}

/** Stands for what is piped in, wherever a file that is read may be named. */
export const STANDARD_INPUT = '-';

export async function readSource(file: string, role: Exclude<Role, 'picture'>): Promise<SourceFile> {
  if (file === STANDARD_INPUT) return readStandardInput(role);
  try {
    const bytes = readPlain(file, MOST_BYTES);
    remember(file, role);
    return { file, text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch (problem) {
    throw new UsageError(refusal(file, role, problem));
  }
}

/** Once for each run: what has been read is gone. Its problems say `stdin` for a file. */
function readStandardInput(role: Exclude<Role, 'picture'>): SourceFile {
  if (isKnown(STANDARD_INPUT))
    throw new UsageError('- stands for standard input, which can be read once; name a file for the other');
  if (process.stdin.isTTY === true)
    throw new UsageError(`- reads the ${role} from standard input; pipe one in, or name a file`);
  remember(STANDARD_INPUT, role);
  try {
    const bytes = readFileSync(process.stdin.fd);
    if (bytes.length > MOST_BYTES)
      throw new UsageError(`the ${role} on standard input is too large; at most 256 KiB are read`);
    return { file: 'stdin', text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch (problem) {
    if (problem instanceof UsageError) throw problem;
    throw new UsageError(
      `the ${role} on standard input ${problem instanceof TypeError ? 'is no text in UTF-8; save it so' : `cannot be read: ${reason(problem)}`}`,
    );
  }
}

function refusal(file: string, role: Role, problem: unknown): string {
  if (problem instanceof NotPlain) {
    switch (problem.kind) {
      case 'folder':
        return `${file} is a folder; name the ${role} in it`;
      case 'large':
        return `${file}: the ${role} is refused, ${problem.message}; at most 256 KiB are read`;
      case 'other':
        return `${problem.message}; name a plain file as the ${role}`;
      case 'moving':
        return problem.message;
      default:
        return problem.kind satisfies never;
    }
  }
  if (codeOf(problem) === 'ENOENT') return `${file}: there is no such ${role}; check the name and the folder`;
  if (problem instanceof TypeError) return `${file}: the ${role} is no text in UTF-8; save it so`;
  return `${file}: the ${role} cannot be read: ${reason(problem)}`;
}

/** The shop's file: the one asked for, else `shop.yaml` beside the job or in the nearest folder above it. */
export async function findShop(jobFile: string, shopFile: string | undefined): Promise<SourceFile | undefined> {
  const file = shopFile ?? nearestShop(jobFile);
  if (file === undefined) return undefined;
  if (look(file)?.kind === 'plain') await putInOrder(dirname(DISK.real(file)));
  return readSource(file, "shop's file");
}

/** Whatever is called so counts: one that cannot be read is told, not passed over. */
export function nearestShop(jobFile: string): string | undefined {
  for (let folder = dirname(resolve(jobFile)); ; folder = dirname(folder)) {
    const file = join(folder, 'shop.yaml');
    const found = look(file);
    if (found?.kind === 'link')
      throw new UsageError(`${file} is a link that leads nowhere; take it away, or put right where it leads`);
    if (found !== undefined) return file;
    if (dirname(folder) === folder) return undefined;
  }
}

/** Folders above may be closed to whoever runs this. */
function look(file: string): Found | undefined {
  try {
    return DISK.find(file);
  } catch {
    return undefined;
  }
}

/** Is there anything of that name, a link that leads nowhere too? */
export const isThere = (file: string): boolean => look(file) !== undefined;

/** Where outputs go unless shopFile otherwise: a folder named after the job's file, beside it. */
export function defaultFolder(jobFile: string): string {
  if (jobFile === STANDARD_INPUT) return 'job';
  const name = basename(jobFile, extname(jobFile));
  const folder = join(dirname(jobFile), name);
  return folder === jobFile ? `${folder}-out` : folder;
}
