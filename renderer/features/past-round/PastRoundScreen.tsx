import { useMemo, useRef, useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { MeterOfYard } from '../../../shared-core/contract/meter.ts';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { woodTempSchema } from '../../../shared-core/contract/round.ts';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useAlone } from '../../data/useAlone.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useQuery } from '../../data/useQuery.ts';
import { useQuestions } from '../../form/useQuestions.ts';
import { useSaving } from '../../form/useSaving.ts';
import { hrefOf, wayOn } from '../../stores/navigation.ts';
import { tellUndoable } from '../../stores/notices.ts';
import { Await } from '../../ui/Await.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button, ButtonLink } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { dayOf } from '../../ui/days.ts';
import { EmptyState, Screen, Sheet } from '../../ui/Screen.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { DayOrderChoice } from '../stacks/DayOrderChoice.tsx';
import { OtherBoard } from './OtherBoard.tsx';
import { PageGrid } from './PageGrid.tsx';
import { PageHead } from './PageHead.tsx';
import { PlacedLater, placedLaterOf, readThere } from './PlacedLater.tsx';
import {
  aboveOf,
  cellIn,
  depthsOf,
  type PageDraft,
  startOf,
  textAt,
  typedBoards,
  typedCells,
  withPins,
} from './page-draft.ts';
import { usePageProblems } from './page-problems.ts';
import { useDraftKey, usePageDraft } from './usePageDraft.ts';

type Answers = Pick<RequestInput<'pastRounds.save'>, 'isDateRight' | 'isAnother' | 'order'>;

/** The questions with which a page is refused. */
const questions = {
  'round-date.long-before-stack': { isDateRight: true },
  'past-round.saved-already': { isAnother: true },
  'past-round.moved-or-probed-first': {},
} as const;
/** What the button then says; null: as usual. */
const yes = {
  'round-date.long-before-stack': 'past-round.date-right',
  'past-round.saved-already': 'past-round.save-again',
  'past-round.moved-or-probed-first': null,
} as const;

/** A page of a notebook with the readings of one stack, typed as a grid. */
export function PastRoundScreen({ stackId }: { stackId: number }) {
  const { say } = useWords();
  const stack = useQuery('stacks.get', { id: stackId });
  const meters = useQuery('meters.list', {});
  const stackName = stack.output?.name ?? '';
  return (
    <Screen
      title={say('past-round.title')}
      lead={stack.output && say('past-round.lead', { stackName })}
      actions={
        <ButtonLink href={hrefOf({ name: 'stack', id: stackId })}>{say('round-page.go-to-stack')}</ButtonLink>
      }
    >
      <Await of={[stack, meters]}>{(here, all) => <OnePage key={stackId} stack={here} meters={all} />}</Await>
    </Screen>
  );
}

/** Two windows would type over each other. */
function OnePage({ stack, meters }: { stack: StackRow; meters: MeterOfYard[] }) {
  const { say } = useWords();
  const draftKey = useDraftKey(stack.id);
  const { isAlone, take } = useAlone(draftKey);
  if (isAlone === null) return null;
  if (isAlone) return <Page key={draftKey} draftKey={draftKey} stack={stack} meters={meters} />;
  return (
    <Banner kind="caution" actions={<Button onClick={take}>{say('past-round.type-here')}</Button>}>
      {say('past-round.in-other-window')}
    </Banner>
  );
}

/** What is typed for a board; NaN where a cell has no reading in it. */
function lineOf(page: PageDraft, boardId: number, unit: ReadingUnit) {
  const cells = Array.from({ length: page.columns }, (_, column) =>
    cellIn(textAt(page, boardId, column), unit),
  );
  const raws = cells.map((cell) => (cell === null ? null : 'raw' in cell ? cell.raw : Number.NaN));
  return { boardId, raws, above: aboveOf(cells) };
}

function Page({ draftKey, stack, meters }: { draftKey: string; stack: StackRow; meters: MeterOfYard[] }) {
  const { say } = useWords();
  const { page: draft, set, discard } = usePageDraft(draftKey);
  // Where no day is given yet, the boards are those of now.
  const [now] = useState(() => new Date());
  const startedAt = startOf(draft, now);
  // What was typed before the day was, or of another day, is never out of sight. Typing on asks for nothing new.
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another day, or another line, has other boards.
  const more = useMemo(
    () => [...new Set([...draft.more, ...typedBoards(draft)])].sort((one, other) => one - other),
    [startedAt, draft.more],
  );
  const asked = useQuery('pastRounds.page', {
    stackId: stack.id,
    startedAt: startedAt ?? now.toISOString(),
    more,
  });
  const meterId =
    draft.meterId === undefined ? (meters.find(({ isTypedFrom }) => isTypedFrom)?.id ?? null) : draft.meterId;
  const meter = meters.find(({ id }) => id === meterId) ?? null;
  const page = withPins(draft, meter?.profile?.pins?.lengthMm ?? null);
  const unit = meter?.unit ?? 'pct';
  const saveButton = useRef<HTMLButtonElement>(null);
  const [isDiscarding, setDiscarding] = useState(false);
  const problems = usePageProblems(page, dayOf(now));
  const { busy, problem, save, form, answer } = useSaving(() => undefined);
  const { underWay, follow, cancel } = useLongWork();
  const readings = typedCells(page);
  const known = {
    stackId: stack.id,
    meterId: meter?.id ?? null,
    unit,
    ...tempsOf(page),
    depths: depthsOf(page),
  };

  const { boards = [], gone = [] } = asked.output ?? {};
  const lines = boards.map(({ boardId }) => lineOf(page, boardId, unit));
  const placed = startedAt === null ? [] : placedLaterOf(boards, page);
  const { answers, open, give, ask } = useQuestions<Answers, keyof typeof questions>(questions, {
    startedAt,
    lines,
  });
  const yesWords = open && yes[open];
  const cells = lines.flatMap(({ raws }) => raws).filter((raw) => raw !== null);
  const unread = cells.filter(Number.isNaN).length;

  async function send(): Promise<void> {
    problems.show();
    if (problems.any || startedAt === null) throw new Refusal(message('validation.fix-fields'));
    const thereSince = readThere(placed, page);
    const goOn = wayOn();
    const saved = await ask((given) =>
      follow((work) =>
        bridge().command('pastRounds.save', {
          ...known,
          startedAt,
          isDayOnly: page.time === '',
          thereSince,
          lines: lines.filter(({ raws }) => raws.some((raw) => raw !== null)),
          work,
          ...given,
        }),
      ),
    );
    discard();
    goOn({ name: 'round', id: saved.roundId });
    // On the screen that it is about.
    setTimeout(() =>
      tellUndoable(say('past-round.saved', { readings: saved.readings, startedOn: startedAt }), (work) =>
        bridge().command('acts.undo', { act: saved.act, work }),
      ),
    );
  }

  return (
    <form
      ref={form}
      className="column"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save(send);
      }}
    >
      <Sheet>
        <PageHead
          page={page}
          onChange={set}
          meters={meters}
          meterId={meter?.id ?? null}
          placeName={asked.output?.placeName ?? stack.placeName}
          problems={problems}
        />
      </Sheet>
      {asked.output?.sameDay && startedAt !== null && (
        <Banner
          kind="caution"
          actions={
            <ButtonLink href={hrefOf({ name: 'round', id: asked.output.sameDay.roundId })}>
              {say('past-round.same-day-open')}
            </ButtonLink>
          }
        >
          {say('past-round.same-day', { boards: asked.output.sameDay.boards })}
        </Banner>
      )}
      <Sheet title={say('past-round.readings')}>
        <Await of={[asked]}>
          {({ boards: rows }) =>
            rows.length === 0 ? (
              <EmptyState sentence={say('past-round.no-boards')} />
            ) : (
              <>
                {startedAt === null && <p className="soft">{say('past-round.boards-of-today')}</p>}
                <PageGrid
                  boards={rows}
                  page={page}
                  onChange={set}
                  unit={unit}
                  pins={meter?.profile?.pins ?? null}
                  depthProblems={problems.depths}
                  known={{ ...known, startedAt: startedAt ?? now.toISOString() }}
                  onEnd={() => saveButton.current?.focus()}
                />
              </>
            )
          }
        </Await>
        <OtherBoard stack={stack} onBoards={(ids) => set({ more: [...new Set([...draft.more, ...ids])] })} />
        {gone.length > 0 && (
          <p className="soft">{say('past-round.gone', { boards: gone.length, boardCodes: gone })}</p>
        )}
        {startedAt !== null && (
          <PlacedLater placed={placed} startedAt={startedAt} page={page} onChange={set} />
        )}
        <div ref={answer}>
          {problem && <Banner kind={open === null ? 'problem' : 'caution'}>{problem.sentence}</Banner>}
        </div>
        {(open === 'past-round.moved-or-probed-first' || answers.order != null) && (
          <DayOrderChoice value={answers.order ?? null} onValue={(order) => give({ order })} />
        )}
        {underWay !== null && underWay.total > 0 && (
          <WorkUnderWay label={say('past-round.saving')} {...underWay} onCancel={cancel} />
        )}
        <div aria-live="polite">
          {unread > 0 && <Banner kind="caution">{say('past-round.not-numbers', { values: unread })}</Banner>}
        </div>
        <Actions>
          <button
            ref={saveButton}
            type="submit"
            className="button button-main"
            disabled={busy || boards.length === 0 || unread > 0}
          >
            <span>
              {yesWords === null
                ? say('past-round.save', { readings: cells.length - unread })
                : say(yesWords)}
            </span>
          </button>
          {readings > 0 && <Button onClick={() => setDiscarding(true)}>{say('past-round.discard')}</Button>}
        </Actions>
        <p className="soft">{say('past-round.kept')}</p>
      </Sheet>
      {isDiscarding && (
        <Dialog title={say('past-round.discard-title')} onClose={() => setDiscarding(false)}>
          <p>{say('past-round.discard-effect', { readings })}</p>
          <Actions>
            <Button
              kind="danger"
              onClick={() => {
                discard();
                setDiscarding(false);
              }}
            >
              {say('past-round.discard')}
            </Button>
            <Button onClick={() => setDiscarding(false)}>{say('common.cancel')}</Button>
          </Actions>
        </Dialog>
      )}
    </form>
  );
}

/** What of the temperature fits; the rest is marked at its field. */
function tempsOf({ temperatureOf, tempC }: PageDraft): { woodTempC: number | null; airTempC: number | null } {
  const fits = woodTempSchema.safeParse(tempC).success;
  return {
    woodTempC: temperatureOf === 'wood' && fits ? tempC : null,
    airTempC: temperatureOf === 'air' && fits ? tempC : null,
  };
}
