import { statSync } from 'node:fs';
import { userInfo } from 'node:os';
import { setTimeout as wait } from 'node:timers/promises';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { message } from '../../shared-core/words/message.ts';
import { http } from '../node-http.ts';
import { type Attributes, type IppAnswer, ippAnswer, ippRequest, operations, type Sent } from './ipp.ts';
import { mediaFor } from './media.ts';

/** Where the print system of this computer listens, on Linux and on macOS (as their builds of CUPS come, from memory). */
const usualSockets = ['/run/cups/cups.sock', '/var/run/cups/cups.sock', '/private/var/run/cupsd'];

/** How long the print system may take for an answer, and for a job of many pages, ms. */
const ANSWER_MS = 5000;
const TAKES_JOB_MS = 60_000;
/** How often it is asked what became of a job, ms. */
const LOOK_MS = 300;
/** As many bytes as a list of printers may have. */
const MOST_BYTES = 10_000_000;

/** States of a printer and of a job (RFC 8011, 5.4.11 and 5.3.7, from memory). */
const PRINTER_STOPPED = 5;
const jobStates = { canceled: 7, aborted: 8, completed: 9 };
/** The person's system asks for a password. */
const LOCKED = new Set([401, 403]);
const lockedStatuses = new Set([0x0401, 0x0402, 0x0403]);

export interface Printer {
  name: string;
  /** As the person's system shows it. */
  title: string;
  /** Why it prints nothing now, in the print system's own words, which may be none; null where it prints. */
  stopped: string | null;
  /** The papers that it says it takes (PWG 5101.1); none where it does not say. */
  media: string[];
}

export interface PrintJob {
  printer: string;
  pdf: Uint8Array;
  title: string;
  widthMm: number;
  heightMm: number;
}

/** `waiting`: it is still in the queue; `why` has the print system's own words, which may be none. */
export interface PrintOutcome {
  state: 'printed' | 'waiting';
  why: string;
}

/**
 * The print queue of this computer, without a dialog: the Internet Printing Protocol over the socket of CUPS, which only
 * programs of this computer reach.
 *
 * @param sockets  the first that is there is taken
 * @param followMs how long a job is followed
 */
export function createPrintQueue({
  sockets = usualSockets,
  followMs = 20_000,
}: {
  sockets?: readonly string[];
  followMs?: number;
} = {}) {
  const socket = (): string | undefined => sockets.find((path) => isSocket(path));

  async function ask(path: string, head: Buffer, document: Uint8Array = Buffer.alloc(0)): Promise<IppAnswer> {
    const socketPath = socket();
    if (socketPath === undefined) throw new Refusal(message('refusal.no-print-queue'));
    const { status, body } = await post(socketPath, path, head, document);
    if (LOCKED.has(status)) throw new Refusal(message('refusal.printer-locked'));
    if (status !== 200) throw new Refusal(message('refusal.print-queue-silent'));
    const answer = understood(body);
    if (lockedStatuses.has(answer.status)) throw new Refusal(message('refusal.printer-locked'));
    return answer;
  }

  async function printers(): Promise<Printer[]> {
    const { groups } = await ask(
      '/',
      ippRequest(operations.printers, [
        [
          'keyword',
          'requested-attributes',
          'printer-name',
          'printer-info',
          'printer-state',
          'printer-state-message',
          'printer-is-accepting-jobs',
          'media-supported',
        ],
      ]),
    );
    return groups.map(printerFrom).filter(({ name }) => name !== '');
  }

  async function jobOf(name: string, id: number): Promise<Attributes | undefined> {
    const asked: Sent[] = [...ofPrinter(name), ['integer', 'job-id', id]];
    const { groups } = await ask(pathOf(name), ippRequest(operations.jobAttributes, asked));
    return groups[0];
  }

  /** @returns once it is printed, or has waited for long */
  async function follow(printer: Printer, id: number, signal: AbortSignal): Promise<PrintOutcome> {
    const { name, title: printerName } = printer;
    const startedMs = performance.now();
    let why = '';
    while (performance.now() - startedMs < followMs) {
      if (isStoppedByPerson(signal)) {
        const asked: Sent[] = [...ofPrinter(name), ['integer', 'job-id', id], byUser()];
        await ask(pathOf(name), ippRequest(operations.cancelJob, asked));
      }
      signal.throwIfAborted();
      const job = await jobOf(name, id);
      why = textOf(job, 'job-printer-state-message');
      const state = job?.get('job-state')?.[0];
      if (state === jobStates.completed) return { state: 'printed', why: '' };
      if (state === jobStates.canceled) throw new Refusal(message('refusal.print-canceled', { printerName }));
      if (state === jobStates.aborted)
        throw new Refusal(message('refusal.print-failed', { printerName, ...because(why) }));
      await wait(LOOK_MS);
    }
    return { state: 'waiting', why };
  }

  return {
    /** Null where this computer has no print queue that we can ask. */
    printers: async (): Promise<Printer[] | null> => (socket() === undefined ? null : printers()),

    /**
     * Sends a document to a printer at its actual size, and follows it. Stopped by the signal, it is taken out of the queue.
     * @throws Refusal where nothing of it prints, that says why
     */
    async print(
      { printer: name, pdf, title, widthMm, heightMm }: PrintJob,
      signal: AbortSignal,
    ): Promise<PrintOutcome> {
      const printer = (await printers()).find((each) => each.name === name);
      if (!printer) throw new Refusal(message('refusal.printer-gone', { printerName: name }));
      const { title: printerName, stopped } = printer;
      if (stopped !== null)
        throw new Refusal(message('refusal.printer-stopped', { printerName, ...because(stopped) }));
      const media = mediaFor(printer.media, widthMm, heightMm);
      if (media === null)
        throw new Refusal(message('refusal.printer-without-paper', { printerName, widthMm, heightMm }));
      signal.throwIfAborted();
      const { status, groups } = await ask(
        pathOf(name),
        ippRequest(
          operations.printJob,
          [
            ...ofPrinter(name),
            byUser(),
            ['name', 'job-name', title],
            ['mime', 'document-format', 'application/pdf'],
          ],
          [
            ['keyword', 'media', media],
            ['keyword', 'print-scaling', 'none'],
          ],
        ),
        pdf,
      );
      const id = groups[0]?.get('job-id')?.[0];
      if (status >= 0x0100 || typeof id !== 'number')
        throw new Refusal(message('refusal.print-failed', { printerName, ...because('') }));
      return await follow(printer, id, signal);
    },
  };
}
export type PrintQueue = ReturnType<typeof createPrintQueue>;

/** Where Pintally is closed, what was sent prints all the same. */
const isStoppedByPerson = ({ reason }: AbortSignal): boolean =>
  reason instanceof Refusal && reason.problem.code === 'refusal.stopped';

/** For a sentence: what the print system says, where it says something. */
const because = (reason: string) => ({ says: reason === '' ? 'nothing' : 'something', reason });

function isSocket(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isSocket() ?? false;
}

const pathOf = (name: string): string => `/printers/${encodeURIComponent(name)}`;
const ofPrinter = (name: string): Sent[] => [['uri', 'printer-uri', `ipp://localhost${pathOf(name)}`]];
const byUser = (): Sent => ['name', 'requesting-user-name', userInfo().username];

const textOf = (attributes: Attributes | undefined, name: string): string =>
  String(attributes?.get(name)?.[0] ?? '');

function printerFrom(attributes: Attributes): Printer {
  const name = textOf(attributes, 'printer-name');
  const isStopped =
    attributes.get('printer-state')?.[0] === PRINTER_STOPPED ||
    attributes.get('printer-is-accepting-jobs')?.[0] === false;
  return {
    name,
    title: textOf(attributes, 'printer-info') || name,
    stopped: isStopped ? textOf(attributes, 'printer-state-message') : null,
    media: (attributes.get('media-supported') ?? []).map(String),
  };
}

/** @throws Refusal where it is no answer of a print system */
function understood(body: Buffer): IppAnswer {
  try {
    return ippAnswer(body);
  } catch {
    throw new Refusal(message('refusal.print-queue-silent'));
  }
}

/** @throws Refusal where the print system does not answer */
function post(
  socketPath: string,
  path: string,
  head: Buffer,
  document: Uint8Array,
): Promise<{ status: number; body: Buffer }> {
  return new Promise((resolve, reject) => {
    const fail = (): void => reject(new Refusal(message('refusal.print-queue-silent')));
    const asking = http.request(
      {
        socketPath,
        path,
        method: 'POST',
        headers: {
          Host: 'localhost',
          'Content-Type': 'application/ipp',
          'Content-Length': head.length + document.length,
        },
        timeout: document.length > 0 ? TAKES_JOB_MS : ANSWER_MS,
      },
      (answer) => {
        const parts: Buffer[] = [];
        let length = 0;
        answer.on('data', (part: Buffer) => {
          length += part.length;
          if (length > MOST_BYTES) asking.destroy(new Error('The print system answered without end.'));
          parts.push(part);
        });
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, body: Buffer.concat(parts) }));
        answer.on('error', fail);
      },
    );
    asking.on('timeout', () => asking.destroy(new Error('The print system does not answer.')));
    asking.on('error', fail);
    asking.write(head);
    asking.end(document);
  });
}
