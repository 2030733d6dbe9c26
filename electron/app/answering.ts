import { type Answer, Conflict, Refusal } from '../../shared-core/contract/answer.ts';
import { type Envelope, envelopeSchema } from '../../shared-core/contract/envelope.ts';
import {
  type ActName,
  type CheckedInput,
  isAct,
  isOfYard,
  type RequestName,
  type RequestOutput,
  requests,
  topicsOf,
} from '../../shared-core/contract/requests.ts';
import { problemOf } from '../../shared-core/contract/validation.ts';
import { message } from '../../shared-core/words/message.ts';
import { isDamage, isRefusedWriting } from '../store/yard-file.ts';
import { hashOf, OutcomeUnknown } from './acting.ts';
import type { ActingInSlices } from './acting-in-slices.ts';
import type { AppContext } from './context.ts';
import { faultMessage, isDisturbance } from './fault-message.ts';
import type { Act, Commands, Handler, Queries } from './handlers.ts';
import { ending, isSlices } from './slices.ts';
import { withUnsaved } from './yard/rescuing.ts';
import type { Yards } from './yard/yards.ts';

const NOT_DONE = { undone: message('refusal.undone'), again: message('refusal.try-again') };

/**
 * Answers requests: checks what was sent, lets the handler do it, and tells what changed.
 *
 * An act and everything that it writes are one transaction; one on many records, several (`acting-in-slices.ts`). What follows from it and is no part of it, as judging,
 * comes after the commit (`afterwards.ts`); where that fails the act is done all the same. The same act sent again is answered with what it came to, and not done again.
 */
export function createAnswering(
  context: AppContext,
  yards: Yards,
  inSlices: ActingInSlices,
  handlers: Queries & Commands,
  doWhatWaits: () => void,
  renewBadCaches: () => void,
) {
  /** A query is answered whether or not that succeeds. */
  function afterQuery(): void {
    try {
      renewBadCaches();
    } catch (error) {
      if (!isDisturbance(error)) context.reportFault(error);
    }
  }

  /** @throws Refusal; anything only where nothing was saved, or OutcomeUnknown */
  async function perform<N extends ActName>(name: N, input: CheckedInput<N>, id: string, window: string) {
    const inputHash = hashOf(input);
    const { acts } = context.yard();
    const underWay = inSlices.find(id);
    const done = acts.find(id);
    const known = underWay ?? done;
    if (known && (known.request !== name || known.inputHash !== inputHash)) {
      throw new Refusal(message('refusal.act-reused'));
    }
    if (underWay) return (await underWay.done).output as RequestOutput<N>;
    if (done) return done.outcome as RequestOutput<N>;
    if (acts.isTakenBack(id)) throw new Refusal(message('refusal.stopped'));
    const act = handlers[name] as Act<N>;
    /** What no window could show is not saved either. */
    const fitting = (made: RequestOutput<N>): RequestOutput<N> => {
      const fit = requests[name].output.safeParse(made);
      if (!fit.success) throw new RangeError(`What ${name} came to does not fit.`, { cause: fit.error });
      return made;
    };
    const work = 'work' in input ? input.work : null;
    const asked = { id, request: name, inputHash, who: window };
    const { output, failures } = await inSlices.run<RequestOutput<N>>(asked, work, () => {
      const came = act(input, window);
      return isSlices(came) ? ending(came, fitting) : fitting(came);
    });
    for (const failure of failures) context.delays.tell(window, failure);
    context.changed([...topicsOf(name, input, output), 'acts']);
    return output;
  }

  /** What must write to a file that is still being checked, or came upon damage in it, waits for that. */
  async function whenChecked<T>(work: () => T): Promise<Awaited<T>> {
    try {
      return await work();
    } catch (error) {
      const checking = yards.checking();
      if (checking === null) throw yards.noticeDamage(error) ?? error;
      if (!(isDamage(error) || isRefusedWriting(error))) throw error;
      await checking;
      return await work();
    }
  }

  async function outputOf<N extends RequestName>(
    name: N,
    input: unknown,
    { yard, act }: Envelope,
    window: string,
  ): Promise<RequestOutput<N>> {
    const { kind, input: schema } = requests[name];
    const checked = schema.safeParse(asJson(input));
    if (!checked.success) {
      throw new Refusal(message('refusal.nothing-saved', { why: problemOf(checked.error) }));
    }
    const data = checked.data as CheckedInput<N>;
    const checkYard = (): void => {
      if (isOfYard(name) && yard !== yards.current().uuid) {
        throw new Refusal(message('refusal.other-yard', { kind: yards.kind() }));
      }
    };
    const moved = yards.noticeMoved();
    if (moved !== null && kind === 'command') throw isAct(name) ? withUnsaved(moved) : moved;
    doWhatWaits();
    return whenChecked(async () => {
      checkYard();
      if (isAct(name)) {
        if (act === null) throw new Refusal(message('refusal.request-unknown'));
        return (await perform(name, data as never, act, window)) as RequestOutput<N>;
      }
      const output = await (handlers[name] as Handler<N>)(data, window);
      // What took a moment is an answer about the yard that was open then.
      if (kind === 'query') {
        checkYard();
        afterQuery();
      } else context.changed(topicsOf(name, data, output));
      return output;
    });
  }

  return {
    /** Answers one request of a window. Never throws: what went wrong is in the answer. */
    answer: async (window: string, name: string, input: unknown, envelope: unknown): Promise<Answer> => {
      try {
        const sent = envelopeSchema.safeParse(envelope);
        if (!Object.hasOwn(requests, name) || !sent.success) {
          throw new Refusal(message('refusal.request-unknown'));
        }
        return { ok: true, output: await outputOf(name as RequestName, input, sent.data, window) };
      } catch (error) {
        if (error instanceof Conflict) return { ok: false, problem: error.problem, current: error.current };
        const problem = faultMessage(error, NOT_DONE, context.reportFault);
        return { ok: false, problem, ...(error instanceof OutcomeUnknown ? { mayBeDone: true } : {}) };
      }
    },
  };
}

/** Electron carries more than JSON, such as fields that are undefined: an edit must not take one for a change. */
function asJson(input: unknown): unknown {
  try {
    return JSON.parse(JSON.stringify(input));
  } catch {
    return undefined;
  }
}
