import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { ListedAct } from '../../../shared-core/contract/requests/acts.ts';
import { firstSentence } from '../../../shared-core/history/act-line.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import type { Touched, UndoConflict } from '../../store/act-undo.ts';
import {
  correctionNow,
  correctionsOf,
  type MeterCorrection,
  toCorrect,
} from '../../store/meter-corrections.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { Commands } from '../handlers.ts';
import type { Comparing } from '../judging/comparing.ts';
import type { Judging } from '../judging/judging.ts';
import type { MeterDesk } from '../meter/meter-desk.ts';
import { sameNamed } from '../meter/meters.ts';
import type { Rounds } from '../rounds/rounds.ts';
import { inSlices, paced, type Slices } from '../slices.ts';
import { reopenThoseInUse } from '../stock/open-ones.ts';
import { lineOf } from './listing.ts';
import { recordMessage } from './record-message.ts';

/** Undoes acts and redoes them from what the file recorded, and then makes again what is based on that. */
export function undoingCommands(
  context: AppContext,
  judging: Judging,
  comparing: Comparing,
  rounds: Pick<Rounds, 'takeAgain' | 'moving'>,
  meter: Pick<MeterDesk, 'readAsSaved'>,
) {
  function whyNot(what: 'undo' | 'redo', conflict: UndoConflict | 'known'): Message {
    if (conflict === 'known') {
      return what === 'undo' ? message('refusal.undone-already') : message('refusal.not-undone');
    }
    const record = recordMessage(conflict);
    if (conflict.why === 'taken') return message('refusal.undo-taken', { record, what });
    const { acts, meters } = context.yard();
    const later = conflict.by === null ? undefined : acts.listed(acts.rootOf(conflict.by) ?? conflict.by);
    if (later === undefined) return message('refusal.undo-changed', { record, what });
    const state = later.isUndone ? 'undone' : 'done';
    const facts = {
      laterAt: later.at,
      laterLine: firstSentence(lineOf({ acts, meters }, later)),
      record,
      what,
    };
    if (conflict.why === 'repeated') return message('refusal.redo-repeated', facts);
    if (conflict.why === 'lost') return message('refusal.undo-lost', { ...facts, later: state });
    return conflict.why === 'used'
      ? message('refusal.undo-used', facts)
      : message('refusal.undo-changed-by', { ...facts, later: state });
  }

  /** Boards whose findings rest on anything that was changed. */
  function* boardsOf(touched: Touched, isOver: () => boolean): Slices<number[]> {
    const { boards, findings, moves, readings } = context.yard();
    if (touched.isTaught) return findings.boardIds();
    const finding = [
      ...[...touched.stackIds].map((id) => () => boards.idsOfStack(id)),
      ...[...touched.placeIds].map((id) => () => moves.boardsEverAt(id)),
      ...[...touched.roundIds].map((id) => () => readings.boardsWalked(id)),
      ...[...touched.speciesIds].map((id) => () => boards.idsOfSpecies(id)),
      ...[...touched.endUseIds].map((id) => () => boards.idsForEndUse(id)),
    ];
    const ids = new Set(touched.boardIds);
    for (const [index, find] of finding.entries()) {
      for (const id of find()) ids.add(id);
      if (isOver()) yield { done: index + 1, total: finding.length };
    }
    return [...ids];
  }

  /** Checks count or correct that did not before, or the other way around. */
  function* correctAgain(before: ReadonlyMap<number, MeterCorrection>, now: string): Slices<void> {
    const yard = context.yard();
    for (const [meterId, correction] of correctionsOf(yard, now)) {
      const was = before.get(meterId) ?? { ...correction, steps: { pct: [], ohm: [] } };
      if (JSON.stringify(was) === JSON.stringify(correction)) continue;
      yard.meters.setOff(meterId, correctionNow(correction), now);
      const readings = toCorrect(yard, meterId, correction, was);
      if (readings.length > 0) yield* rounds.moving.corrected(readings);
    }
  }

  function* undo(id: string, what: 'undo' | 'redo', isOver: () => boolean): Slices<ListedAct> {
    const { acts, meters } = context.yard();
    const of = orRefuse(acts.rootOf(id), 'act');
    const now = context.now();
    const before = correctionsOf(context.yard(), now);
    const undoing = yield* acts.undo(of, now, what, isOver);
    if (!undoing.done) throw new Refusal(whyNot(what, undoing.conflict));
    const { touched } = undoing;
    reopenThoseInUse(context);
    // A deleted meter is only left out of the lists, so its name may be another's now.
    const twin = sameNamed(context.yard());
    if (twin) {
      const record = recordMessage({ inTable: 'meter', name: twin.name });
      throw new Refusal(message('refusal.undo-taken', { record, what }));
    }
    yield* correctAgain(before, now);
    const boardIds = yield* boardsOf(touched, isOver);
    yield* inSlices(boardIds, (slice) => judging.judgeAgain(slice));
    context.afterwards(() => {
      context.onceAnswered(judging.takeUp);
      comparing.compare([...touched.roundIds]);
      rounds.takeAgain([...touched.roundIds]);
      meter.readAsSaved();
    });
    const act = orRefuse(acts.listed(of), 'act');
    return { id: act.id, at: act.at, isUndone: what === 'undo', line: lineOf({ acts, meters }, act) };
  }

  return {
    'acts.undo': ({ act }) => paced((isOver) => undo(act, 'undo', isOver)),
    'acts.redo': ({ act }) => paced((isOver) => undo(act, 'redo', isOver)),
  } satisfies Partial<Commands>;
}
