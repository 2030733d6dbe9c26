import { useEffect, useRef } from 'react';
import type { SoundName } from '../../../shared-core/hands-free/sounds.ts';
import { spokenCode, spokenOfBoard, spokenOfSaved } from '../../../shared-core/hands-free/spoken.ts';
import { spotAt, spotName } from '../../../shared-core/probing/readings/spots.ts';
import { asksToProbeAgain } from '../../../shared-core/probing/suspicions/probe-again.ts';
import { isQuestionable } from '../../../shared-core/probing/suspicions/suspicion.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { playSound } from '../../app/sounds.ts';
import { sayAloud, stopSpeaking } from '../../app/speech.ts';
import { isLinkLost, useLink } from '../../stores/link.ts';
import { useMeter } from '../../stores/meter.ts';
import { type Saved, useRound } from '../../stores/round.ts';
import { useSettings } from '../../stores/settings.ts';
import { spokenWordsNow } from '../../words.ts';
import type { Probing } from './useProbing.ts';

const isMeterLost = ({ state }: ReturnType<typeof useMeter.getState>): boolean =>
  state?.phase === 'reconnecting' || state?.phase === 'failed';

/** Tells by sounds and by a voice what happens in a round, as far as the settings ask for it. Neither is ever needed. */
export function useRoundSignals(probing: Probing): void {
  const { round, board, spotIndex, fieldIsEmpty, meterIsLive, savedBoard, mayBeOther } = probing;
  const saved = useRound((store) => store.saved);
  const phase = useMeter(({ live }) => live?.phase ?? 'pins-out');
  const meterIsLost = useMeter(isMeterLost);
  const linkIsLost = useLink(isLinkLost);
  const newest = useRef(probing);
  useEffect(() => {
    newest.current = probing;
  });

  const sound = saved && soundOf(saved, round.boards);
  const heard = saved && `${saved.reading.id} ${isQuestionable(saved.reading.suspicions)}`;
  const told = useRef(heard);
  // biome-ignore lint/correctness/useExhaustiveDependencies: told once for each reading, and again where it is questionable later.
  useEffect(() => {
    if (heard === told.current) return;
    told.current = heard;
    if (!saved || !sound) return;
    beep(sound);
    stopSpeaking();
    speak(...sentencesOf(saved, sound, newest.current));
  }, [heard]);

  const isHere = useRef(board.boardId);
  useEffect(() => {
    if (isHere.current === board.boardId) return;
    isHere.current = board.boardId;
    const boardCode = spokenCode(board.code);
    const spot = spotIndex === null ? undefined : spotAt(board, spotIndex);
    if (spot) speak(message('spoken.board', { boardCode, spot: spotName(spot) }));
  }, [board, spotIndex]);

  const wasLost = useRef({ meterIsLost, linkIsLost });
  useEffect(() => {
    const before = wasLost.current;
    wasLost.current = { meterIsLost, linkIsLost };
    const isNews = (meterIsLost && !before.meterIsLost) || (linkIsLost && !before.linkIsLost);
    const isBack = before.meterIsLost ? meterIsLive : before.linkIsLost && !meterIsLost;
    if (isBack && !linkIsLost) {
      beep('link-back');
      speak(message('spoken.link-back'));
    }
    if (!isNews) return;
    beep('link-lost');
    stopSpeaking();
    speak(message(linkIsLost ? 'spoken.link-lost' : 'spoken.meter-lost'));
  }, [meterIsLost, meterIsLive, linkIsLost]);

  /** A press that saved nothing; the question about the pins sounds by itself. */
  const refused = useRound(
    ({ trouble, done }) => trouble ?? (done?.code === 'round.pull-pins' ? done.code : null),
  );
  const isMissed = useMeter((meter) => meter.isMissed);
  useEffect(() => {
    if (refused !== null || isMissed) beep('questionable');
  }, [refused, isMissed]);

  /** Nothing is saved before that is answered, or the pins are out. */
  const asksOf = savedBoard?.code;
  useEffect(() => {
    if (asksOf === undefined) return;
    beep('questionable');
    stopSpeaking();
    speak(
      message(mayBeOther ? 'round.pins-maybe-saved' : 'round.pins-saved', { boardCode: spokenCode(asksOf) }),
    );
  }, [asksOf, mayBeOther]);

  const isNextValueComing = !fieldIsEmpty || phase === 'drifting';
  useEffect(() => {
    if (isNextValueComing) stopSpeaking();
  }, [isNextValueComing]);
  useEffect(() => stopSpeaking, []);
}

function beep(name: SoundName): void {
  const { sound, soundLevel } = useSettings.getState().settings;
  if (sound) playSound(name, soundLevel);
}

function speak(...sentences: Message[]): void {
  const { voice } = useSettings.getState().settings;
  if (voice === 'off') return;
  const { say } = spokenWordsNow();
  sayAloud(sentences.map((each) => say(each)).join(' '), voice);
}

const isDone = ({ finding }: { finding: { openSpot: number | null } | null }): boolean =>
  finding !== null && finding.openSpot === null;

/** A board is done by the reading that fills its last spot, and by no further one there or elsewhere on it. */
function soundOf({ reading, board, wasDone }: Saved, boards: Probing['round']['boards']): SoundName {
  if (isQuestionable(reading.suspicions)) return 'questionable';
  if (wasDone || !isDone(board)) return 'saved';
  const others = boards.filter(({ boardId }) => boardId !== board.boardId);
  return others.every(isDone) ? 'round-done' : 'board-done';
}

function sentencesOf(
  { reading, board }: Saved,
  sound: SoundName,
  { round, board: here, spotIndex, probed }: Probing,
): Message[] {
  const { corrected, counts, suspicions } = reading;
  const value = { mcPct: corrected.mcPct, counts, isQuestionable: isQuestionable(suspicions) };
  const spot = here.boardId === board.boardId && spotIndex !== null ? spotAt(here, spotIndex) : undefined;
  if (sound === 'round-done') return spokenOfSaved(value, null, message('spoken.all-done'));
  const next = round.boards[round.boards.findIndex(({ boardId }) => boardId === board.boardId) + 1];
  // A board that comes by itself is said as it comes.
  const { nextBoardAfterS } = useSettings.getState().settings;
  const call = board.finding?.call;
  const after = spokenOfBoard(
    call ? message(`call.${call}`) : null,
    nextBoardAfterS === null ? (next?.code ?? null) : null,
    nextBoardAfterS !== null &&
      probed?.boardId === board.boardId &&
      asksToProbeAgain(probed.assessment?.readings ?? []),
  );
  return spokenOfSaved(value, spot ? spotName(spot) : null, sound === 'board-done' ? after : null);
}
