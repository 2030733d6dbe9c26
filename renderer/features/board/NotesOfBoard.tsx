import type { BoardForecast, ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import type { Judgement } from '../../../shared-core/probing/calls/judgement.ts';
import type { Code } from '../../../shared-core/words/en/index.ts';
import { type Fact, type Message, message } from '../../../shared-core/words/message.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';

/** What the figures beside the call show. */
const ofFigures: readonly Code[] = ['call.likely', 'call.difference-allowed', 'call.gradient-of-drying'];

/** What "Ready here" beside the call says, where there is a forecast. */
const ofReadyHere: readonly Code[] = [
  'call.place-too-damp',
  'call.place-too-damp-all-year',
  'call.place-too-slow',
];

/** What says the limit of `call.too-wet-to-bring-in`, too. */
const withLimits: readonly (Code | undefined)[] = ['next-step.too-wet-to-move', 'next-step.back-under-cover'];

/** What else speaks for the call, what is missing for the dates, and what they are based on. */
export function NotesOfBoard({
  missing,
  forecast,
  judgement: { reasons, next },
  onEdit,
}: Pick<RequestOutput<'boards.get'>, 'missing'> & {
  /** Null until it is there. */
  forecast: BoardForecast | null;
  judgement: Judgement;
  onEdit: () => void;
}) {
  const { say } = useWords();
  const details = forecast?.details;
  const saidBeside = details ? [...ofFigures, ...ofReadyHere] : ofFigures;
  const shown = reasons
    .slice(1)
    .filter(({ code, facts }) => !saidBeside.includes(code) && !isOfSpecies(facts?.why))
    .filter(({ code }) => code !== 'call.too-wet-to-bring-in' || !withLimits.includes(next.why?.code))
    .map((each) => say(each))
    .filter((note) => !next.why || note !== say(next.why));
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
