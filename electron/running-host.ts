import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import { once } from 'node:events';
import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import type { IncomingMessage } from 'node:http';
import { join } from 'node:path';
import { z } from 'zod';
import { http } from './node-http.ts';
import { makePrivateFolder } from './store/private-files.ts';

/** What the loopback host of a data folder leaves there for the person's next `npm start`. */
const runningHostSchema = z.object({
  /** Opens its window once. */
  startLink: z
    .string()
    .regex(/^http:\/\/127\.0\.0\.1:\d{1,5}\/\?open=[0-9a-f]{64}$/)
    // A port above 65535 makes it no address.
    .refine((link) => URL.canParse(link)),
  /** The host shows by it that it is the one that wrote this. */
  proof: z.string().regex(/^[0-9a-f]{64}$/),
});
/** A loopback host of this data folder that can be asked for a window. */
export type RunningHost = z.infer<typeof runningHostSchema>;

/** The path that a host is asked at, by a question that nobody asked before, whether it is the one. */
export const PROOF_PATH = 'running';

const ANSWER_MS = 2000;
const fileIn = (folder: string): string => join(folder, 'running-host.json');

/** Always a new file, which only this user can read: one that another user put there is never written to. */
export function saveRunningHost(folder: string, host: RunningHost): void {
  makePrivateFolder(folder);
  rmSync(fileIn(folder), { force: true });
  try {
    writeFileSync(fileIn(folder), JSON.stringify(host), { flag: 'wx', mode: 0o600 });
  } catch (error) {
    // A full disk leaves an empty one.
    rmSync(fileIn(folder), { force: true });
    throw error;
  }
}

/** The host is found there no more, where it is what was saved last. */
export function forgetRunningHost(folder: string, proof: string): void {
  if (lastHost(folder)?.proof === proof) rmSync(fileIn(folder), { force: true });
}

/** The host that was last started there, whether it runs or not; null where no other user can have written of it. */
function lastHost(folder: string): RunningHost | null {
  try {
    const file = fileIn(folder);
    const found = statSync(file);
    // Whoever opens a pipe waits for as long as nobody writes to it.
    if (!found.isFile()) return null;
    const { uid, mode } = found;
    const isOurs = process.getuid === undefined || (uid === process.getuid() && (mode & 0o077) === 0);
    return isOurs ? runningHostSchema.parse(JSON.parse(readFileSync(file, 'utf8'))) : null;
  } catch {
    return null;
  }
}

/** Where the host before was, so that windows that are still open find this one; 0 for any port. */
export function lastPort(folder: string): number {
  const last = lastHost(folder);
  return last ? Number(new URL(last.startLink).port) : 0;
}

/** The host that serves this data folder now; null where none does. */
export async function runningHost(folder: string): Promise<RunningHost | null> {
  const last = lastHost(folder);
  if (last === null) return null;
  const question = randomBytes(32).toString('hex');
  try {
    const address = new URL(`/${PROOF_PATH}?${question}`, last.startLink);
    const right = Buffer.from(proofFor(question, last.proof));
    const shown = await beginningOf(address, right.length + 1);
    return shown.length === right.length && timingSafeEqual(shown, right) ? last : null;
  } catch {
    return null;
  }
}

/** Of what is answered there, no more than so many bytes and what came with them: an answer may have no end. */
async function beginningOf(address: URL, bytes: number): Promise<Buffer> {
  const asking = http.get(address, { agent: false, signal: AbortSignal.timeout(ANSWER_MS) });
  const [answer] = (await once(asking, 'response')) as [IncomingMessage];
  let read = Buffer.alloc(0);
  // Leaving the loop closes the connection.
  for await (const part of answer) {
    read = Buffer.concat([read, part]);
    if (read.length >= bytes) break;
  }
  return read;
}

/** What the host answers to a question: whoever took its port since cannot. */
export const proofFor = (question: string, proof: string): string =>
  createHmac('sha256', proof).update(question).digest('hex');
