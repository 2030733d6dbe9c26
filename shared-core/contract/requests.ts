import type { z } from 'zod';
import { actRequests } from './requests/acts.ts';
import { airRequests } from './requests/air.ts';
import { backupRequests } from './requests/backups.ts';
import { boardRequests } from './requests/boards.ts';
import { catalogRequests } from './requests/catalog.ts';
import { dateRequests } from './requests/dates.ts';
import { exchangeRequests } from './requests/exchange.ts';
import { importRequests } from './requests/imports.ts';
import { labelRequests } from './requests/labels.ts';
import { lifeRequests } from './requests/life.ts';
import { logRequests } from './requests/log.ts';
import { meterRequests } from './requests/meter.ts';
import { meterCheckRequests } from './requests/meter-checks.ts';
import { metersRequests } from './requests/meters.ts';
import { moveRequests } from './requests/moves.ts';
import { noteRequests } from './requests/notes.ts';
import { ovenCheckRequests } from './requests/oven-checks.ts';
import { pastRoundRequests } from './requests/past-rounds.ts';
import { pictureRequests } from './requests/pictures.ts';
import { placeRequests } from './requests/places.ts';
import { printerRequests } from './requests/printers.ts';
import { recoveryRequests } from './requests/recovery.ts';
import { reportRequests } from './requests/reports.ts';
import { roundRequests } from './requests/rounds.ts';
import { sampleRequests } from './requests/samples.ts';
import { settingRequests } from './requests/settings.ts';
import { stackRequests } from './requests/stacks.ts';
import { stationRequests } from './requests/stations.ts';
import { workRequests } from './requests/work.ts';
import { yardRequests } from './requests/yard.ts';
import type { Topic } from './topics.ts';

/**
 * Everything that the window can ask of the machine. A request answers with its output or is refused with a message
 * for a person (see `answer.ts`). Adding one is an entry in `requests/` and a handler of the same name in `electron/app/`.
 */
export const requests = {
  ...yardRequests,
  ...stackRequests,
  ...boardRequests,
  ...lifeRequests,
  ...moveRequests,
  ...placeRequests,
  ...airRequests,
  ...stationRequests,
  ...catalogRequests,
  ...ovenCheckRequests,
  ...sampleRequests,
  ...meterRequests,
  ...metersRequests,
  ...meterCheckRequests,
  ...roundRequests,
  ...noteRequests,
  ...pictureRequests,
  ...pastRoundRequests,
  ...dateRequests,
  ...labelRequests,
  ...printerRequests,
  ...actRequests,
  ...reportRequests,
  ...settingRequests,
  ...backupRequests,
  ...exchangeRequests,
  ...importRequests,
  ...workRequests,
  ...logRequests,
  ...recoveryRequests,
};

type Requests = typeof requests;
export type RequestName = keyof Requests;
type NameOfKind<Kind> = { [N in RequestName]: Requests[N]['kind'] extends Kind ? N : never }[RequestName];
export type QueryName = NameOfKind<'query'>;
export type CommandName = NameOfKind<'command'>;
/** Commands that write to the yard. */
export type ActName = {
  [N in CommandName]: Requests[N] extends { ofMachine: true } | { ofWindow: true } ? never : N;
}[CommandName];
/** As it is sent. */
export type RequestInput<N extends RequestName> = z.input<Requests[N]['input']>;
/** As it was checked and completed by its schema. */
export type CheckedInput<N extends RequestName> = z.output<Requests[N]['input']>;
export type RequestOutput<N extends RequestName> = z.output<Requests[N]['output']>;

/** Whether a request is about the open yard, so that it must be the one that the window shows. */
export const isOfYard = (name: RequestName): boolean => !('ofMachine' in requests[name]);

export const isAct = (name: RequestName): name is ActName =>
  requests[name].kind === 'command' && isOfYard(name) && !('ofWindow' in requests[name]);

/** What a query shows, or what a command changed. */
export function topicsOf<N extends RequestName>(
  name: N,
  input: CheckedInput<N>,
  output: RequestOutput<N>,
): readonly Topic[] {
  const { topics } = requests[name] as unknown as {
    topics(input: CheckedInput<N>, output: RequestOutput<N>): readonly Topic[];
  };
  return topics(input, output);
}
