import { useEffect, useState } from 'react';
import { z } from 'zod';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { dayUntil, type StackRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { DateField } from '../../form/DateField.tsx';
import { Select } from '../../form/Field.tsx';
import { TemperatureField, useWoodTemp } from '../../form/TemperatureField.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useQuestions } from '../../form/useQuestions.ts';
import { useSaving } from '../../form/useSaving.ts';
import { dropHeldKeys, holdKeys } from '../../stores/held-keys.ts';
import { isLiveHere, useMeter } from '../../stores/meter.ts';
import { hrefOf, wayOn } from '../../stores/navigation.ts';
import { useSettings } from '../../stores/settings.ts';
import { Await } from '../../ui/Await.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button, ButtonLink } from '../../ui/Button.tsx';
import { dayOf } from '../../ui/days.ts';
import { HelpLink } from '../../ui/HelpLink.tsx';
import { EmptyState, Screen, Sheet } from '../../ui/Screen.tsx';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';
import { MeterElsewhere } from '../meter/MeterElsewhere.tsx';
import { CheckOffer } from '../meter-check/CheckOffer.tsx';
import { DayOrderChoice } from '../stacks/DayOrderChoice.tsx';
import { KeyList } from './KeyList.tsx';
import { MeasuredTemp } from './MeasuredTemp.tsx';

/** Asks for the stack and the wood temperature, then starts. */
export function RoundStartScreen({
  stackId,
  placeId,
}: {
  stackId: number | null;
  /** Where the boards are; null: with the stack. */
  placeId: number | null;
}) {
  const { say } = useWords();
  const stacks = useQuery('stacks.list', {});
  return (
    <Screen title={say('round-start.title')} lead={say('round-start.lead')}>
      <Await of={[stacks]}>
        {(all) => {
          const choices = all.flatMap(choicesOf);
          return choices.length > 0 ? (
            <Start
              choices={choices}
              first={firstOf(choices, stackId, placeId)}
              isPlaceAsked={placeId !== null}
            />
          ) : (
            <EmptyState sentence={say('round-start.no-boards')}>
              <ButtonLink kind="main" href={hrefOf({ name: 'stacks' })}>
                {say('nav.go-to-stacks')}
              </ButtonLink>
            </EmptyState>
          );
        }}
      </Await>
    </Screen>
  );
}

/** Boards of a stack at one place, which a round reads. */
interface Choice {
  /** Tells it from the others. */
  key: string;
  stack: StackRow;
  /** Null: with the stack. */
  placeId: number | null;
  placeName: string;
  boards: number;
}

function choicesOf(stack: StackRow): Choice[] {
  const { id, placeName, boards, elsewhere } = stack;
  return [{ placeId: null, placeName, boards }, ...elsewhere.places]
    .filter((at) => at.boards > 0)
    .map((at) => ({
      key: [id, at.placeId ?? []].flat().join('-'),
      stack,
      placeId: at.placeId,
      placeName: at.placeName,
      boards: at.boards,
    }));
}

/** The one that was asked for, or the first of its stack; undefined where that has no boards any more. */
function firstOf(choices: readonly Choice[], stackId: number | null, placeId: number | null) {
  if (stackId === null) return choices[0];
  const ofStack = choices.filter(({ stack }) => stack.id === stackId);
  return ofStack.find((each) => (each.placeId ?? each.stack.placeId) === placeId) ?? ofStack[0];
}

type Answers = Pick<RequestInput<'rounds.start'>, 'isDateRight' | 'order'>;
/** The questions with which a start is refused, and what starting again answers; which came first is chosen. */
const questions = {
  'past-round.moved-or-probed-first': {},
  'clock.before-last-act': { isDateRight: true },
  'clock.before-build': { isDateRight: true },
  'round-date.long-before-stack': { isDateRight: true },
} as const;

const dateSchemaOn = (today: string) => z.object({ startedOn: dayUntil(today).nullable() });

function Start({
  choices,
  first,
  isPlaceAsked,
}: {
  choices: readonly Choice[];
  first: Choice | undefined;
  isPlaceAsked: boolean;
}) {
  const { say } = useWords();
  const [picked, setPicked] = useState<string | null>(null);
  const [shown] = useState(first?.key ?? null);
  // A list from before the boards were added, or moved, does not have them, or their place, yet.
  const chosen = picked ?? (isPlaceAsked ? null : shown) ?? first?.key ?? null;
  const answer = useWoodTemp({ woodTempC: null, unknown: false });
  const today = dayOf(new Date());
  const date = useDraft(dateSchemaOn(today), { startedOn: null });
  const isDated = date.draft.startedOn !== null && date.draft.startedOn !== today;
  const isMeterHere = useMeter(isLiveHere);
  const { busy, problem, save, form } = useSaving(() => undefined);
  // After the heading, which takes the focus on a new screen.
  useEffect(() => form.current?.querySelector('input')?.focus(), [form]);
  const choice = choices.find(({ key }) => key === chosen);
  const stack = choice?.stack;
  const { answers, open, give, ask } = useQuestions<Answers, keyof typeof questions>(questions, {
    chosen,
    startedOn: date.draft.startedOn,
  });
  const isOrderAsked = open === 'past-round.moved-or-probed-first';

  function start(): void {
    const woodTempC = answer.made;
    if (woodTempC === undefined) answer.show();
    else if (choice) {
      void save(async () => {
        holdKeys();
        const goOn = wayOn();
        const meant = {
          stackId: choice.stack.id,
          ...(choice.placeId !== null && { placeId: choice.placeId }),
          woodTempC,
          ...date.read(),
        };
        const { id } = await ask((given) => bridge().command('rounds.start', { ...meant, ...given })).catch(
          (error: unknown) => {
            dropHeldKeys();
            throw error;
          },
        );
        goOn({ name: 'round', id });
      });
    }
  }

  return (
    <Sheet>
      <CheckOffer />
      <form
        ref={form}
        className="form-grid"
        onSubmit={(event) => {
          event.preventDefault();
          start();
        }}
      >
        <div className="column">
          <Select
            label={say('round-start.stack')}
            value={chosen}
            options={[
              ...(stack ? [] : [{ value: null, label: say('round-start.choose-stack') }]),
              ...choices.map(({ key, stack: { name: stackName }, boards, placeName }) => ({
                value: key,
                label: say('round-start.stack-option', { stackName, boards, placeName }),
              })),
            ]}
            onValue={setPicked}
          />
          {stack?.openRoundId ? (
            <>
              <p>{say('round-start.unfinished')}</p>
              <Actions>
                <ButtonLink kind="main" href={hrefOf({ name: 'round', id: stack.openRoundId })}>
                  {say('round-start.resume')}
                </ButtonLink>
              </Actions>
            </>
          ) : (
            <>
              {problem === null && <ClockProblem />}
              <TemperatureField answer={answer} />
              <MeasuredTemp
                answer={answer}
                placeId={choice ? (choice.placeId ?? choice.stack.placeId) : null}
              />
              <Unfold words={say('round-start.other-date')}>
                <DateField
                  label={say('round-start.date')}
                  hint={say('round-start.date-hint')}
                  max={today}
                  {...date.field('startedOn')}
                />
              </Unfold>
              {stack && (
                <p>
                  <a href={hrefOf({ name: 'past-round', stackId: stack.id })}>{say('past-round.title')}</a>
                </p>
              )}
              {(isOrderAsked || answers.order !== undefined) && (
                <DayOrderChoice value={answers.order ?? null} onValue={(order) => give({ order })} />
              )}
              {problem && <Banner kind={open ? 'caution' : 'problem'}>{problem.sentence}</Banner>}
              <Actions>
                <Button type="submit" kind="main" disabled={busy || !stack}>
                  {say(
                    open === 'round-date.long-before-stack'
                      ? 'round-start.year-right'
                      : open && !isOrderAsked
                        ? 'round-start.start-anyway'
                        : 'round-start.start',
                  )}
                </Button>
              </Actions>
            </>
          )}
        </div>
        <div className="column">
          <Banner kind="caution">{say('round-start.caution')}</Banner>
          <p>{say('round-start.pins-along')}</p>
          <HelpLink chapter="pins" />
          <MeterHere isDated={isDated} />
          <h2>{say('round-start.keys')}</h2>
          <KeyList isLive={isMeterHere && !isDated} onlyFirst />
        </div>
      </form>
    </Sheet>
  );
}

/** A clock that is certainly wrong would give the round a wrong date. */
function ClockProblem() {
  const { say } = useWords();
  const problem = useQuery('rounds.clock', {}).output?.problem;
  return problem ? <Banner kind="caution">{say(problem)}</Banner> : null;
}

/** Where the readings will come from. */
function MeterHere({ isDated }: { isDated: boolean }) {
  const { say } = useWords();
  const isHere = useMeter(isLiveHere);
  const meter = useMeter(({ state }) => state);
  const savesSettled = useSettings(({ settings }) => settings?.saveWhenSettled ?? true);
  if (isDated) return <p>{say('round-start.typed')}</p>;
  if (!isHere) return meter?.phase === 'live' ? <MeterElsewhere /> : <p>{say('round-start.no-meter')}</p>;
  if (meter?.toConfirm) return <p>{say('meter.confirm.not-saved')}</p>;
  const kind = meter?.kind ?? 'none';
  return <p>{say(savesSettled ? 'round-start.meter-live' : 'round-start.meter-live-by-press', { kind })}</p>;
}
