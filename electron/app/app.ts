import type { Answer } from '../../shared-core/contract/answer.ts';
import type { Topic } from '../../shared-core/contract/topics.ts';
import type { YardInfo } from '../../shared-core/contract/yard.ts';
import { builtAt } from '../built-at.ts';
import { createExchangeThread } from '../exchange/exchange-tasks.ts';
import { exportCommands } from '../exchange/exporting.ts';
import { createBringingIn } from '../exchange/merging.ts';
import { createLog, type Log } from '../log/log-file.ts';
import { monotonicMs } from '../monotonic.ts';
import { createPrintQueue, type PrintQueue } from '../print/print-queue.ts';
import { createActing } from './acting.ts';
import { createActingInSlices } from './acting-in-slices.ts';
import { createAfterwards } from './afterwards.ts';
import { placeAirCommands, placeAirQueries } from './air/place-air.ts';
import { createSensorDesk } from './air/sensor-desk.ts';
import { sensorCommands, sensorQueries } from './air/sensors.ts';
import { createAnswering } from './answering.ts';
import { type ChooseFile, choosingCommands } from './choosing-files.ts';
import type { AppContext, QueryContext } from './context.ts';
import { createDelays } from './delays.ts';
import type { Forecaster } from './forecast/forecast-messages.ts';
import { forecastQueries } from './forecast/forecasts.ts';
import { createOutlooks } from './forecast/outlooks.ts';
import { stackPlanQueries } from './forecast/stack-plans.ts';
import type { Commands, Queries } from './handlers.ts';
import { listingQueries } from './history/listing.ts';
import { undoingCommands } from './history/undoing.ts';
import { createImports } from './importing/imports.ts';
import { createAssessing } from './judging/assessing.ts';
import { createComparing, type RoundThread } from './judging/comparing.ts';
import { createJudging } from './judging/judging.ts';
import { ovenCheckCommands, ovenCheckQueries } from './judging/oven-checks.ts';
import { createOwnFits } from './judging/own-fits.ts';
import { sampleBoardCommands, sampleBoardQueries } from './judging/sample-boards.ts';
import { createLongWork } from './long-work.ts';
import type { LinkMakers } from './meter/chosen-link.ts';
import { createLiveTelling } from './meter/live-telling.ts';
import { meterCheckCommands, meterCheckQueries } from './meter/meter-checks.ts';
import { createMeterDesk } from './meter/meter-desk.ts';
import { metersCommands, metersQueries } from './meter/meters.ts';
import { createPacketTelling } from './meter/packet-telling.ts';
import { createSimulatedAim } from './meter/simulated-aim.ts';
import { createOnceAnswered } from './once-answered.ts';
import { logCommands, type OpenFile } from './opening-log.ts';
import { createOwnThread } from './own-thread.ts';
import { createPdfThread } from './pdf-thread.ts';
import type { PictureThread } from './pictures/picture-tasks.ts';
import { createPictures } from './pictures/pictures.ts';
import { createPrinting } from './printing.ts';
import { createReports, reportQueries } from './reports/reports.ts';
import { depthQueries } from './rounds/depths.ts';
import { movingToBoardQueries } from './rounds/moving-to-board.ts';
import { pastRoundCommands, pastRoundQueries } from './rounds/past-rounds.ts';
import { createPlanBases, pinsInUse } from './rounds/plan-bases.ts';
import { redatingCommands, redatingQueries } from './rounds/redating.ts';
import { createRoundView } from './rounds/round-view.ts';
import { createRounds } from './rounds/rounds.ts';
import { createSignal } from './signal.ts';
import { boardCommands, boardQueries } from './stock/boards.ts';
import { boardsTogetherCommands, boardsTogetherQueries } from './stock/boards-together.ts';
import { catalogCommands, catalogQueries } from './stock/catalog.ts';
import { closingCommands, closingQueries } from './stock/closing.ts';
import { cuttingCommands, cuttingQueries } from './stock/cutting.ts';
import { dateQueries, plannedMoveCommands } from './stock/dates.ts';
import { enteredTwiceCommands, enteredTwiceQueries } from './stock/entered-twice.ts';
import { firstStackCommands } from './stock/first-stack.ts';
import { createLabelPdfs, labelCommands, labelQueries, type ShapesThread } from './stock/labels.ts';
import { leftBoardQueries } from './stock/left-boards.ts';
import { lifeCommands } from './stock/life-of-boards.ts';
import { moveCommands, moveQueries } from './stock/moves.ts';
import { noteCommands, noteQueries } from './stock/notes.ts';
import { placeCommands, placeQueries } from './stock/places.ts';
import { projectCommands, projectQueries } from './stock/projects.ts';
import { stackVolumeQueries } from './stock/stack-volume.ts';
import { stackCommands, stackQueries } from './stock/stacks.ts';
import { stationQueries } from './stock/stations.ts';
import type { ThreadFiles } from './thread-files.ts';
import { createWindows, type Emit } from './windows.ts';
import { noteFullerBackup } from './yard/after-salvage.ts';
import { createBackupFolder } from './yard/backup-folder.ts';
import type { BackupThread } from './yard/backup-tasks.ts';
import { createBackups } from './yard/backups.ts';
import type { CheckThread } from './yard/check-thread.ts';
import { createClockCheck } from './yard/clock.ts';
import { createRestoring, restoredOf } from './yard/restoring.ts';
import type { SalvageThread } from './yard/salvaging.ts';
import { settingCommands, settingQueries } from './yard/settings.ts';
import { createTransfers } from './yard/transfers.ts';
import { createVerifying } from './yard/verifying.ts';
import { createYards } from './yard/yards.ts';

/** What a window has of the app. */
export interface Connection {
  /** Never throws: what went wrong is in the answer. */
  answer(name: string, input: unknown, envelope: unknown): Promise<Answer>;
  close(): void;
}

export interface AppOptions {
  /** Where yard files live. */
  dataDir: string;
  links: LinkMakers;
  /** For tests: offers the simulated meter in the own yard, too, where what it makes up is saved as any reading is. */
  simulatesInOwnYard?: boolean;
  threads: ThreadFiles;
  clock?: () => Date;
  /** When this app was built; null where that is not known. */
  built?: string | null;
  /** Where faults are written; the fault log of the data folder unless given. */
  log?: Log;
  reportFault?: (error: unknown) => void;
  /** Absent where the window itself shows files. */
  openFile?: OpenFile;
  /** Has the person choose a file in the system's own dialog; null in a browser. */
  chooseFile?: ChooseFile | null;
  /** That of this computer unless given. */
  printQueue?: PrintQueue;
  /** How long nothing may have changed before boards are forecast in the background, ms. */
  forecastAfterMs?: number;
  /** After how long background work that the disk refused is tried again, ms. */
  retryAfterMs?: number;
  /** How long after a yard was opened the day's backup is begun, ms. */
  backUpAfterMs?: number;
  /** How long after a yard was opened its readings are verified in the background, ms. */
  verifyAfterMs?: number;
  /** How long the disk of a backup folder, or of a chosen file, has to answer, ms. */
  diskAnswerMs?: number;
}

/**
 * The whole app behind the contract: Electron's main process and the loopback host both talk to this and to nothing
 * else.
 */
export function createApp({
  dataDir,
  links,
  simulatesInOwnYard = false,
  threads,
  clock = () => new Date(),
  built = builtAt,
  log = createLog(dataDir, clock),
  reportFault = log.fault,
  openFile = async () => false,
  chooseFile = null,
  printQueue = createPrintQueue(),
  forecastAfterMs = 2000,
  retryAfterMs = 10_000,
  backUpAfterMs = 2000,
  verifyAfterMs = 5000,
  diskAnswerMs = 10_000,
}: AppOptions) {
  const now = () => clock().toISOString();
  const windows = createWindows();
  const changes = createSignal<readonly Topic[]>();
  const checkThread: CheckThread = createOwnThread(threads.check);
  // A separate thread: a large file that is opened meanwhile does not wait for all readings of another.
  const verifyThread: CheckThread = createOwnThread(threads.check);
  const salvageThread: SalvageThread = createOwnThread(threads.salvage);
  const shapesThread: ShapesThread = createOwnThread(threads.shapes);
  const pictureThread: PictureThread = createOwnThread(threads.pictures);
  const roundThread: RoundThread = createOwnThread(threads.round);
  const forecaster: Forecaster = createOwnThread(threads.forecast);
  const backupThread: BackupThread = createOwnThread(threads.backup);
  const shortBackupThread: BackupThread = createOwnThread(threads.backup);
  const backupFolder = createBackupFolder(dataDir, shortBackupThread, diskAnswerMs);
  const backups = createBackups(backupFolder, backupThread, shortBackupThread, {
    now,
    reportFault,
    changed,
    yardToBackUp: () => yards.toBackUp(),
    restored: () => restoredOf(yards, backupFolder),
    hasDialogs: chooseFile !== null,
    afterMs: backUpAfterMs,
  });
  const yards = createYards(dataDir, now, checkThread, reportFault, log.note, backups);
  const queryContext: QueryContext = { yard: yards.reader, now };
  const afterwards = createAfterwards();
  const onceAnswered = createOnceAnswered(yards.current, reportFault);
  const acting = createActing({ yard: yards.current, now }, afterwards);
  const context: AppContext = {
    yard: yards.current,
    mayWrite: yards.mayWrite,
    now,
    monotonicMs,
    reportFault,
    changed,
    act: acting.act,
    afterwards: afterwards.add,
    onceAnswered: onceAnswered.add,
    delays: createDelays(windows, reportFault),
    retryAfterMs,
    emitTo: windows.emitTo,
    emitToOthers: windows.emitToOthers,
  };

  const longWork = createLongWork(context);
  const inSlices = createActingInSlices(context, acting.slice, longWork);
  const queryOwnFits = createOwnFits(queryContext);
  const queryAssessing = createAssessing(queryContext, queryOwnFits);
  const ownFits = createOwnFits(context);
  const assessing = createAssessing(context, ownFits);
  const judging = createJudging(context, assessing, inSlices.whenIdle);
  const comparing = createComparing(context, assessing, judging, roundThread);
  const outlooks = createOutlooks(context, assessing, judging, forecaster, changes, forecastAfterMs);
  const canSimulate = () => simulatesInOwnYard || yards.kind() === 'demo';
  const meter = createMeterDesk(context, links, windows, canSimulate, () => sensorDesk.giveWay());
  const sensorDesk = createSensorDesk(
    context,
    links.sensors ?? null,
    meter.link,
    meter.values,
    canSimulate,
    () => rounds.aims.isAnywhere(),
  );
  const clockCheck = createClockCheck(queryContext, built);
  const planBases = createPlanBases(() => pinsInUse(queryContext.yard(), meter.meterId()));
  const queryView = createRoundView(queryContext, queryAssessing, planBases);
  const rounds = createRounds(
    context,
    { assessing, judging, comparing },
    meter,
    windows,
    changes,
    planBases,
    queryView,
    clockCheck.problem,
    sensorDesk.probeTemp,
  );
  rounds.aims.changed.follow(sensorDesk.checkProbes);
  const liveTelling = createLiveTelling(context, meter, rounds.correct);
  const packetTelling = createPacketTelling(context, meter);
  createSimulatedAim(context, meter, rounds);

  const verifying = createVerifying(context, yards, verifyThread, backups, judging, verifyAfterMs);
  const restoring = createRestoring(yards, backups, backupFolder, backupThread, shortBackupThread, {
    dataDir,
    answerMs: diskAnswerMs,
    now,
    leave,
    begin,
  });

  const transfers = createTransfers(yards, backupThread, windows, { dataDir, now });

  const undoing = undoingCommands(context, judging, comparing, rounds, meter);
  const imports = createImports(
    context,
    { judging, comparing, longWork },
    windows,
    transfers,
    (act) => undoing['acts.redo']({ act, work: null }),
    threads.import,
  );

  const pictures = createPictures(queryContext, context, pictureThread, transfers);

  const stockQueries = {
    ...stackQueries(queryContext),
    ...stackPlanQueries(queryContext),
    ...boardQueries(queryContext, queryAssessing),
    ...cuttingQueries(queryContext),
    ...enteredTwiceQueries(queryContext),
    ...forecastQueries(queryContext, queryAssessing, forecaster),
  };
  const askExchange = createExchangeThread(threads.exchange);
  const bringingIn = createBringingIn(yards, restoring, longWork, askExchange, { dataDir, now });
  const labels = createLabelPdfs(queryContext, createPdfThread(threads.labels));
  const reports = createReports(queryContext, stockQueries, createPdfThread(threads.reports), () =>
    pinsInUse(queryContext.yard(), meter.meterId()),
  );
  const printing = createPrinting(printQueue, dataDir, longWork, { labels, reports });

  const queries: Queries = {
    'yard.info': yards.info,
    ...stockQueries,
    ...stackVolumeQueries(queryContext),
    ...leftBoardQueries(queryContext),
    ...boardsTogetherQueries(queryContext),
    ...reportQueries(queryContext, stockQueries, longWork, reports),
    ...placeQueries(queryContext),
    ...sensorQueries(queryContext, sensorDesk),
    ...sensorDesk.queries,
    ...placeAirQueries(queryContext),
    ...listingQueries(queryContext),
    ...stationQueries,
    ...catalogQueries(queryContext),
    ...ovenCheckQueries(queryOwnFits),
    ...sampleBoardQueries(queryContext),
    ...meter.queries,
    ...metersQueries(queryContext, queryAssessing),
    ...meterCheckQueries(queryContext),
    ...depthQueries(queryContext),
    ...movingToBoardQueries(queryContext, queryView),
    ...rounds.queries,
    ...pastRoundQueries(queryContext, queryAssessing),
    ...redatingQueries(queryContext),
    ...closingQueries(queryContext),
    ...moveQueries(queryContext),
    ...noteQueries(queryContext),
    ...pictures.queries,
    ...labelQueries(queryContext, longWork, labels, shapesThread),
    ...printing.queries,
    ...dateQueries(queryContext),
    ...projectQueries(queryContext),
    ...settingQueries(queryContext),
    ...yards.notes.queries,
    ...clockCheck.queries,
    ...backups.queries,
    'backups.look': (input) =>
      transfers.whileHeld(input.file, () => restoring.queries['backups.look'](input)),
    'exchange.look': (input, window) =>
      transfers.whileHeld(input.file, () => bringingIn.queries['exchange.look'](input, window)),
    'recovery.report': yards.salvageReport,
    'recovery.newestActAt': yards.newestActAt,
  };
  const commands: Commands = {
    'yard.openDemo': ({ language }) => change(() => yards.openDemo(language)),
    'yard.openOwn': () => change(yards.openOwn),
    'yard.removeDemo': () => {
      leave();
      return { ...yards.removeDemo(), ...begin() };
    },
    'yard.openRescued': () => {
      const info = change(yards.openRescued);
      backups.recovered();
      return info;
    },
    'yard.startAfresh': () => change(yards.startAfresh),
    ...stackCommands(context, judging),
    ...firstStackCommands(context),
    ...boardCommands(context, judging),
    ...lifeCommands(context),
    ...closingCommands(context, judging),
    ...moveCommands(context, judging),
    ...cuttingCommands(context, judging),
    ...enteredTwiceCommands(context, judging),
    ...boardsTogetherCommands(context, judging, comparing),
    ...noteCommands(context),
    ...pictures.commands,
    ...labelCommands(context),
    ...printing.commands,
    ...placeCommands(context, judging),
    ...sensorCommands(context, sensorDesk, judging),
    ...sensorDesk.commands,
    ...placeAirCommands(context, judging),
    ...catalogCommands(context, judging),
    ...ovenCheckCommands(context, judging, ownFits, assessing.learning),
    ...sampleBoardCommands(context, judging, assessing.learning),
    ...meter.commands,
    ...metersCommands(context, rounds.moving, meter),
    ...meterCheckCommands(context, rounds.moving),
    ...rounds.commands,
    ...redatingCommands(context, judging),
    ...undoing,
    ...imports.commands,
    ...pastRoundCommands(context, judging, comparing),
    ...plannedMoveCommands(context, judging),
    ...projectCommands(context),
    ...settingCommands(context),
    ...longWork.commands,
    'recovery.dismissNote': ({ code }) => {
      yards.notes.dismiss(code);
      verifying.noteDismissed(code);
      return null;
    },
    ...backups.commands,
    ...restoring.commands,
    'backups.restore': (input) =>
      transfers.whileHeld(input.file, () => restoring.commands['backups.restore'](input)),
    ...transfers.commands,
    'exchange.merge': (input, window) =>
      transfers.whileHeld(input.file, () => bringingIn.commands['exchange.merge'](input, window)),
    ...exportCommands(context, longWork, askExchange, transfers),
    ...choosingCommands(chooseFile),
    'recovery.salvage': async () => {
      leave();
      await yards.salvage(salvageThread);
      const info = begin();
      backups.recovered();
      void noteFullerBackup(yards, backups, () => changed(['yardNotes'])).catch(reportFault);
      return info;
    },
    ...logCommands(log, openFile),
  };

  /** The one place that tells what changed, whoever changed it. */
  function changed(topics: Iterable<Topic>): void {
    const all = [...new Set(topics)];
    if (all.length === 0) return;
    try {
      windows.emit('changed', { yard: yards.uuid(), topics: all });
      changes.give(all);
    } catch (error) {
      // What changed is on disk: whoever changed it must not be answered that it is not.
      reportFault(error);
    }
  }

  function change(open: () => void): YardInfo {
    leave();
    open();
    return begin();
  }

  function leave(): void {
    rounds.leave(yards.uuid());
    judging.leave();
    comparing.leave();
    outlooks.leave();
    verifying.leave();
  }

  /** A yard was opened, or a large one was checked. */
  function begin(): YardInfo {
    const info = yards.info();
    if (info.uuid !== null) rounds.comeBack(info.uuid);
    if (info.problem !== null) leave();
    else if (yards.mayWrite()) {
      inSlices.takeUp();
      judging.takeUp();
      outlooks.takeUp();
      backups.yardOpened();
      transfers.clear().catch(reportFault);
      pictures.tidy().catch(reportFault);
      verifying.takeUp();
    }
    meter.yardOpened();
    return info;
  }
  const beginAndTell = (): void => {
    begin();
    changed(['yard']);
  };
  yards.integrityChecked.follow(beginAndTell);
  yards.moved.follow(() => {
    // It may be open again, over other connections.
    leave();
    beginAndTell();
  });
  change(() => undefined);
  rounds.finished.follow(backups.roundFinished);

  /** Makes again what a query came upon in a cache and could not read. */
  function renewBadCaches(): void {
    if (!yards.mayWrite()) return;
    const { badCaches, outlooks: saved } = yards.current();
    const bad = badCaches.take();
    if (bad === null) return;
    judging.judgeAgain([...bad.findings]);
    comparing.compare([...bad.comparisons]);
    saved.renew(bad.outlooks);
    outlooks.takeUp();
  }

  const answering = createAnswering(
    context,
    yards,
    inSlices,
    { ...queries, ...commands },
    onceAnswered.doAll,
    renewBadCaches,
  );

  return {
    /** Whether another Pintally, or another program, has the yard. */
    isYardTaken: yards.isTaken,
    /**
     * A window is there. Its id stays the same as long as it is open, also where it connects again.
     * @param emit  how it is sent events
     */
    connect: (window: string, emit: Emit): Connection => ({
      answer: (name, input, envelope) => answering.answer(window, name, input, envelope),
      close: windows.connect(window, emit),
    }),
    close: async (): Promise<void> => {
      liveTelling.close();
      packetTelling.close();
      longWork.stop();
      await Promise.all([meter.close(), sensorDesk.close()]);
      // What it tells at its end is followed up while the yard is still open.
      await backups.close();
      await imports.close();
      await transfers.close();
      await pictures.idle();
      await pictureThread.close();
      leave();
      await shapesThread.close();
      await roundThread.close();
      await forecaster.close();
      yards.close();
      await backupThread.close();
      await shortBackupThread.close();
      await checkThread.close();
      await verifyThread.close();
      await salvageThread.close();
    },
  };
}
export type App = ReturnType<typeof createApp>;
