import { randomUUID } from 'node:crypto';
import type { App } from '../../../electron/app/app.ts';
import type { Answer } from '../../../shared-core/contract/answer.ts';
import type { EventData, EventName } from '../../../shared-core/contract/events.ts';
import type {
  CommandName,
  QueryName,
  RequestInput,
  RequestName,
  RequestOutput,
} from '../../../shared-core/contract/requests.ts';
import type { YardInfo } from '../../../shared-core/contract/yard.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { createWords } from '../../../shared-core/words/words.ts';

/** What a person in Chicago with a metric window reads. */
export const words = createWords({
  catalog: english,
  locale: 'en-US',
  timeZone: 'America/Chicago',
  units: 'metric',
  today: null,
});
export const { say } = words;

type Ask = (name: RequestName, input: unknown, act?: string) => Promise<Answer>;

/** The output of each request, or its refusal's sentence thrown. */
export const outputsOf =
  (answer: Ask) =>
  async <N extends RequestName>(name: N, input: RequestInput<N>, act?: string): Promise<RequestOutput<N>> => {
    const given = await answer(name, input, act);
    if (!given.ok) throw new Error(say(given.problem));
    return given.output as RequestOutput<N>;
  };

/**
 * A window of the app: it names the yard that it last asked for or opened, and makes each command one act.
 * @param onTold  is given each event as it comes
 */
export function openWindow(
  app: App,
  id = 'window-1',
  onTold: (name: EventName, data: unknown) => void = () => undefined,
) {
  const events: { name: EventName; data: unknown }[] = [];
  const connection = app.connect(id, (name, data) => {
    events.push({ name, data });
    onTold(name, data);
  });
  let yard: string | null | undefined;

  async function answer(name: string, input: unknown, act: string = randomUUID()): Promise<Answer> {
    if (yard === undefined && !name.startsWith('yard.')) await answer('yard.info', {});
    const given = await connection.answer(name, input, { yard: yard ?? null, act });
    if (given.ok && name.startsWith('yard.')) yard = (given.output as YardInfo).uuid;
    return given;
  }

  const request = outputsOf(answer);

  return {
    answer,
    query: <N extends QueryName>(name: N, input: RequestInput<N>) => request(name, input),
    command: <N extends CommandName>(name: N, input: RequestInput<N>, act?: string) =>
      request(name, input, act),
    /** Lets go of the events that came until now. */
    forgetEvents: (): void => {
      events.length = 0;
    },
    /** The sentence with which a request is refused. */
    refusal: async (name: RequestName, input: unknown): Promise<string> => {
      const given = await answer(name, input);
      return given.ok ? 'it was allowed' : say(given.problem);
    },
    /** Every event, in its order. */
    told: (): readonly { name: EventName; data: unknown }[] => events,
    heard: <N extends EventName>(name: N): EventData<N>[] =>
      events.filter((event) => event.name === name).map((event) => event.data as EventData<N>),
    close: connection.close,
  };
}
export type AWindow = ReturnType<typeof openWindow>;
