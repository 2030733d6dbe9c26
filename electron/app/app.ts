import type { z } from 'zod';
import { type Answer, Refusal } from '../../shared-core/contract/answer.ts';
import type { EventData, EventName } from '../../shared-core/contract/events.ts';
import { type RequestName, type RequestOutput, requests } from '../../shared-core/contract/requests.ts';
import { problemOf } from '../../shared-core/contract/validation.ts';
import { message } from '../../shared-core/words/message.ts';
import { isDamage, isRefusedWriting } from '../store/yard-file.ts';
import type { AppContext } from './context.ts';
import { faultMessage } from './fault-message.ts';
import type { ForecastAnswer, ForecastQuestion } from './forecast/forecast-messages.ts';
import { forecastUseCases } from './forecast/forecasts.ts';
import { stackPlanUseCases } from './forecast/stack-plans.ts';
import { createJudging, type RoundThread } from './judging/judging.ts';
import { ovenCheckUseCases } from './judging/oven-checks.ts';
import { createOwnFits } from './judging/own-fits.ts';
import { sampleBoardUseCases } from './judging/sample-boards.ts';
import { createMeterDesk, type LinkMakers } from './meter/meter-desk.ts';
import { createOwnThread } from './own-thread.ts';
import { roundUseCases } from './rounds/rounds.ts';
import { boardUseCases } from './stock/boards.ts';
import { catalogueUseCases } from './stock/catalogue.ts';
import { labelUseCases } from './stock/labels.ts';
import { placeUseCases } from './stock/places.ts';
import { stackVolumeUseCases } from './stock/stack-volume.ts';
import { stackUseCases } from './stock/stacks.ts';
import type { ThreadFiles } from './thread-files.ts';
import { settingUseCases } from './yard/settings.ts';
import { type CheckThread, createYards } from './yard/yards.ts';

type UseCases = {
  [N in RequestName]: (
    input: z.output<(typeof requests)[N]['input']>,
  ) => RequestOutput<N> | Promise<RequestOutput<N>>;
};

const NOT_SAVED = { undone: message('refusal.undone'), again: message('refusal.try-again') };

export interface AppOptions {
  /** Where yard files live. */
  dataDir: string;
  links: LinkMakers;
  threads: ThreadFiles;
  emit<N extends EventName>(name: N, data: EventData<N>): void;
  clock?: () => Date;
  reportFault?: (error: unknown) => void;
}

/**
 * The whole app behind the contract: Electron's main process and the loopback host both talk to this and to nothing
 * else.
 */
export function createApp({
  dataDir,
  links,
  threads,
  emit,
  clock = () => new Date(),
  reportFault = console.error,
}: AppOptions) {
  const now = () => clock().toISOString();
  const checkThread: CheckThread = createOwnThread(threads.check);
  const yards = createYards(dataDir, now, checkThread, reportFault);
  const context: AppContext = { yard: yards.current, mayWrite: yards.mayWrite, now, reportFault, emit };

  const ownFits = createOwnFits(context);
  const roundThread: RoundThread = createOwnThread(threads.round);
  const judging = createJudging(context, ownFits, roundThread);
  const settings = settingUseCases(context);
  const forecaster = createOwnThread<ForecastQuestion, ForecastAnswer[]>(threads.forecast);
  const meter = createMeterDesk(context, judging, links, settings['settings.get']);
  const rounds = roundUseCases(context, judging, meter);

  function change(open: () => void): z.output<(typeof requests)['yard.info']['output']> {
    rounds.leave();
    judging.leave();
    open();
    return begin();
  }

  /** A yard was opened, or a large one was looked through. */
  function begin(): z.output<(typeof requests)['yard.info']['output']> {
    const info = yards.info();
    if (info.problem !== null) {
      rounds.leave();
      judging.leave();
    } else if (yards.mayWrite()) judging.takeUp();
    meter.rememberAgain();
    emit('yard.changed', {});
    return info;
  }
  yards.whenIntegrityChecked(begin);

  const useCases: UseCases = {
    'yard.info': yards.info,
    'yard.openDemo': () => change(yards.openDemo),
    'yard.openOwn': () => change(yards.openOwn),
    'yard.removeDemo': () => change(yards.removeDemo),
    'yard.startAfresh': () => change(yards.startAfresh),
    ...stackUseCases(context, judging),
    ...boardUseCases(context, judging),
    ...forecastUseCases(context, judging, forecaster),
    ...stackPlanUseCases(context, judging, forecaster),
    ...placeUseCases(context, judging),
    ...catalogueUseCases(context, judging),
    ...ovenCheckUseCases(context, judging, ownFits),
    ...stackVolumeUseCases(context),
    ...sampleBoardUseCases(context),
    ...meter.requests,
    ...rounds.requests,
    ...labelUseCases(context, settings['settings.get']),
    ...settings,
  };

  change(() => undefined);

  /** A request that must write to a file that is still being looked through, or that came upon damage in it, waits for that. */
  async function perform(name: RequestName, input: unknown): Promise<unknown> {
    const carryOut = useCases[name] as (input: unknown) => unknown;
    try {
      return await carryOut(input);
    } catch (error) {
      const looking = yards.looking();
      if (looking === null || !(isDamage(error) || isRefusedWriting(error))) throw error;
      await looking;
      return carryOut(input);
    }
  }

  return {
    /** Answers one request of the window. Never throws: what went wrong is in the answer. */
    answer: async (name: string, input: unknown): Promise<Answer> => {
      try {
        if (!Object.hasOwn(requests, name)) throw new Refusal(message('refusal.request-unknown'));
        const checked = requests[name as RequestName].input.safeParse(input);
        if (!checked.success) {
          throw new Refusal(message('refusal.nothing-saved', { why: problemOf(checked.error) }));
        }
        return { ok: true, output: await perform(name as RequestName, checked.data) };
      } catch (error) {
        return { ok: false, problem: faultMessage(error, NOT_SAVED, reportFault) };
      }
    },
    close: async (): Promise<void> => {
      await meter.close();
      judging.leave();
      await roundThread.close();
      await forecaster.close();
      yards.close();
      await checkThread.close();
    },
  };
}
export type App = ReturnType<typeof createApp>;
