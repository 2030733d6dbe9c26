import type { Catalog } from '../en/index.ts';
import { air } from './air.ts';
import { backups } from './backups.ts';
import { board } from './board.ts';
import { builtInNotes } from './built-in-notes.ts';
import { calls } from './calls.ts';
import { cautions } from './cautions.ts';
import { chart } from './chart.ts';
import { closing } from './closing.ts';
import { common } from './common.ts';
import { conflicts } from './conflicts.ts';
import { cupAdvice } from './cup-advice.ts';
import { dates } from './dates.ts';
import { exchange } from './exchange.ts';
import { forecast } from './forecast.ts';
import { forecastReasons } from './forecast-reasons.ts';
import { frame } from './frame.ts';
import { handsFree } from './hands-free.ts';
import { help } from './help.ts';
import { history } from './history.ts';
import { importing } from './import.ts';
import { labels } from './labels.ts';
import { licenses } from './licenses.ts';
import { life } from './life.ts';
import { log } from './log.ts';
import { meter } from './meter.ts';
import { meterCheck } from './meter-check.ts';
import { methods } from './methods.ts';
import { missing } from './missing.ts';
import { movement } from './movement.ts';
import { names } from './names.ts';
import { notes } from './notes.ts';
import { ownFit } from './own-fit.ts';
import { pastRound } from './past-round.ts';
import { pictures } from './pictures.ts';
import { places } from './places.ts';
import { printing } from './printing.ts';
import { refusals } from './refusals.ts';
import { reports } from './reports.ts';
import { round } from './round.ts';
import { sensors } from './sensors.ts';
import { settings } from './settings.ts';
import { shell } from './shell.ts';
import { sources } from './sources.ts';
import { species } from './species.ts';
import { stackCall } from './stack-call.ts';
import { stackPlan } from './stack-plan.ts';
import { stacks } from './stacks.ts';
import { stations } from './stations.ts';
import { suspicions } from './suspicions.ts';
import { table } from './table.ts';
import { tally } from './tally.ts';
import { validation } from './validation.ts';
import { watch } from './watch.ts';
import { weights } from './weights.ts';
import { yardFile } from './yard-file.ts';

/** Every sentence in German, by its code. */
export const german: Catalog = {
  ...air,
  ...backups,
  ...board,
  ...calls,
  ...cautions,
  ...chart,
  ...closing,
  ...common,
  ...conflicts,
  ...cupAdvice,
  ...exchange,
  ...dates,
  ...forecast,
  ...forecastReasons,
  ...frame,
  ...handsFree,
  ...help,
  ...history,
  ...importing,
  ...labels,
  ...licenses,
  ...life,
  ...log,
  ...meter,
  ...meterCheck,
  ...methods,
  ...missing,
  ...movement,
  ...names,
  ...builtInNotes,
  ...notes,
  ...ownFit,
  ...pastRound,
  ...pictures,
  ...places,
  ...printing,
  ...refusals,
  ...reports,
  ...round,
  ...sensors,
  ...settings,
  ...shell,
  ...sources,
  ...species,
  ...stackCall,
  ...stackPlan,
  ...stacks,
  ...stations,
  ...suspicions,
  ...table,
  ...tally,
  ...validation,
  ...watch,
  ...weights,
  ...yardFile,
};
