import type { BoardForecast, ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import type { NextStep } from '../../../shared-core/probing/calls/next-step.ts';
import type { Code } from '../../../shared-core/words/en/index.ts';
import { type Fact, type Message, message } from '../../../shared-core/words/message.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';

/** What is shown with the next step, as when the board is ready where. */
const ofNextStep: readonly Code[] = [
  'forecast.reach',
  'forecast.reach-now',
  'forecast.reach-now-open',
  'forecast.may-reach',
  'forecast.not-by',
  'forecast.moved',
  'forecast.moved-now',
];
/** Of the call, for the day of its round: today's forecast says more of the air, and the figures have the rest. */
const inForecast: readonly Code[] = [
  'call.air-dries-to',
  'call.air-dries-only-to',
  'call.rough-air',
  'call.likely',
  'call.likely-against-target',
  'call.difference-allowed',
];

/** What else speaks for the call and the dates, what is missing for them, and what they are based on. */
export function NotesOfBoard({
  found: { reasons, missing },
  forecast,
  next,
  onEdit,
}: {
  found: RequestOutput<'boards.get'>;
  /** Null until it is there. */
  forecast: BoardForecast | null;
  next: NextStep;
  onEdit: () => void;
}) {
  const { say } = useWords();
  const details = forecast?.details;
  const forecasts = details?.reasons.filter(({ code }) => !ofNextStep.includes(code)) ?? [];
  const hidden: readonly Code[] = [
    ...(details ? inForecast : []),
    ...(next.step === 'probe' ? (['call.more-will-not-help'] as const) : []),
    ...(next.step === 'label' ? (['forecast.ready-now'] as const) : []),
  ];
  const ofCall = reasons.slice(1).filter(({ facts }) => !isOfSpecies(facts?.why));
  const notes = [...ofCall, ...forecasts]
    .filter(({ code }) => !hidden.includes(code))
    .map((each) => say(each));
  const shown = notes.filter((note) => !next.why || note !== say(next.why));
  const basis = details && (
    <ul className="soft list">
      {[basisOf(details), ...details.assumptions]
        .map((each) => say(each))
        .map((each) => (
          <li key={each}>{each}</li>
        ))}
    </ul>
  );
  if (!forecast?.whyNot && shown.length === 0 && missing.length === 0)
    return basis && <Sheet title={say('forecast.based-on')}>{basis}</Sheet>;
  return (
    <Sheet title={say('board.worth-knowing')}>
      {forecast?.whyNot && <p>{say(forecast.whyNot)}</p>}
      {shown.map((note) => (
        <p key={note}>{note}</p>
      ))}
      {basis && <Unfold words={say('forecast.based-on')}>{basis}</Unfold>}
      {missing.length > 0 && (
        <>
          <h3>{say('missing.title')}</h3>
          <ul className="soft list">
            {missing.map((fact) => (
              <li key={fact.code}>{say(fact)}</li>
            ))}
          </ul>
          <Actions>
            <Button onClick={onEdit}>{say('missing.edit')}</Button>
          </Actions>
        </>
      )}
    </Sheet>
  );
}

/** This doubt has its own question beside the call. */
const isOfSpecies = (why: Fact | undefined): boolean =>
  typeof why === 'object' && 'code' in why && why.code === 'suspicion.species-unlike-stack';

/** What the forecast was made from. */
const basisOf = ({ readings: { length: readings }, learnedFrom: others }: ForecastDetails): Message =>
  others === 0
    ? message('forecast.based-on-readings', { readings })
    : message('forecast.based-on-others', { readings, others });
