import { readFileSync } from 'node:fs';

/** What a process did to its folder, as `disk-shim.c` logged it. `end` is how long the write record was then, bytes. */
export type Change = { end: number } & (
  | { op: 'create' | 'opened'; file: number; name: string }
  | { op: 'write'; file: number; offset: number; bytes: Buffer }
  | { op: 'truncate'; file: number; size: number }
  | { op: 'sync' | 'datasync'; file: number }
  | { op: 'rename' | 'link'; from: string; to: string }
  | { op: 'unlink' | 'mkdir'; name: string }
);

/** In the order of `enum op`, which begins at 1. */
const ops = [
  'create',
  'opened',
  'write',
  'truncate',
  'sync',
  'datasync',
  'rename',
  'unlink',
  'mkdir',
  'link',
] as const;
const HEAD_BYTES = 24;

export function readWriteLog(file: string): Change[] {
  const log = readFileSync(file);
  const changes: Change[] = [];
  for (let at = 0; at + HEAD_BYTES <= log.length; ) {
    const op = ops[log.readUInt32LE(at) - 1];
    const length = log.readUInt32LE(at + 4);
    const fileId = Number(log.readBigUInt64LE(at + 8));
    const offset = Number(log.readBigUInt64LE(at + 16));
    const bytes = log.subarray(at + HEAD_BYTES, at + HEAD_BYTES + length);
    at += HEAD_BYTES + length;
    changes.push({ end: at, ...changeOf(op, fileId, offset, bytes) });
  }
  return changes;
}

type Unplaced = Change extends infer Each ? (Each extends Change ? Omit<Each, 'end'> : never) : never;

function changeOf(
  op: (typeof ops)[number] | undefined,
  file: number,
  offset: number,
  bytes: Buffer,
): Unplaced {
  const text = bytes.toString('utf8');
  switch (op) {
    case 'create':
    case 'opened':
      return { op, file, name: text };
    case 'write':
      return { op, file, offset, bytes };
    case 'truncate':
      return { op, file, size: offset };
    case 'sync':
    case 'datasync':
      return { op, file };
    case 'rename':
    case 'link': {
      const [from = '', to = ''] = text.split('\0');
      return { op, from, to };
    }
    case 'unlink':
    case 'mkdir':
      return { op, name: text };
    default:
      throw new Error('This is no write record of the shim.');
  }
}
