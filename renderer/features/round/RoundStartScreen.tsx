import { useState } from 'react';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Select } from '../../form/Field.tsx';
import { TemperatureField } from '../../form/TemperatureField.tsx';
import { readTemperature } from '../../form/wood-temp.ts';
import { isLiveHere, useMeter } from '../../stores/meter.ts';
import { go, hrefOf } from '../../stores/navigation.ts';
import { attempt } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button, ButtonLink } from '../../ui/Button.tsx';
import { EmptyState, Failed, Loading, Screen, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { MeterElsewhere } from '../meter/MeterElsewhere.tsx';
import { KeyList } from './KeyList.tsx';
import { roundKeys } from './round-keys.ts';
import './round.css';

/** Asks for the stack and the wood temperature, then starts. */
export function RoundStartScreen({ stackId }: { stackId: number | null }) {
  const { say } = useWords();
  const stacks = useQuery('stacks.list', {});
  return (
    <Screen title={say('round-start.title')} lead={say('round-start.lead')}>
      {stacks.error && <Failed sentence={stacks.error} again={stacks.again} />}
      {stacks.loading && <Loading />}
      {stacks.output && <Start stacks={stacks.output} stackId={stackId} />}
    </Screen>
  );
}

function Start({ stacks, stackId }: { stacks: StackRow[]; stackId: number | null }) {
  const { say } = useWords();
  const units = useUnits();
  const withBoards = stacks.filter((stack) => stack.boards > 0);
  const [chosen, setChosen] = useState(stackId ?? withBoards[0]?.id ?? null);
  const [temperature, setTemperature] = useState<{ typed: number | null; unknown: boolean }>({
    typed: null,
    unknown: false,
  });
  const [problem, setProblem] = useState<Message | null>(null);
  const isHere = useMeter(isLiveHere);
  const isElsewhere = useMeter(({ state }) => state?.phase === 'live') && !isHere;
  const [starting, setStarting] = useState(false);
  const stack = withBoards.find((each) => each.id === chosen);

  if (withBoards.length === 0) {
    return (
      <EmptyState sentence={say('round-start.no-boards')}>
        <ButtonLink kind="main" href={hrefOf({ name: 'stacks' })}>
          {say('nav.go-to-stacks')}
        </ButtonLink>
      </EmptyState>
    );
  }

  async function start(): Promise<void> {
    const read = readTemperature(temperature, units);
    if (!read.ok) return setProblem(read.problem);
    if (!stack) return;
    setStarting(true);
    const round = await attempt(
      bridge().command('rounds.start', { stackId: stack.id, woodTempC: read.woodTempC }),
    );
    setStarting(false);
    if (round) go({ name: 'round', id: round.id });
  }

  return (
    <Sheet>
      <form
        className="round-start"
        onSubmit={(event) => {
          event.preventDefault();
          void start();
        }}
      >
        <div className="round-start-part">
          <Select
            label={say('round-start.stack')}
            value={chosen === null ? '' : String(chosen)}
            options={[
              ...(stack ? [] : [{ value: '', label: say('round-start.choose-stack') }]),
              ...withBoards.map((each) => ({
                value: String(each.id),
                label: say('round-start.stack-option', {
                  stackName: each.name,
                  boards: each.boards,
                  placeName: each.placeName,
                }),
              })),
            ]}
            onValue={(value) => setChosen(value === '' ? null : Number(value))}
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
              <TemperatureField
                value={temperature}
                units={units}
                problem={problem}
                onValue={setTemperature}
              />
              <Actions>
                <Button type="submit" kind="main" disabled={starting || !stack}>
                  {say('round-start.start')}
                </Button>
              </Actions>
            </>
          )}
        </div>
        <div className="round-start-part">
          <Banner kind="caution">{say('round-start.caution')}</Banner>
          {isElsewhere ? (
            <MeterElsewhere />
          ) : (
            <p>{say(isHere ? 'round-start.meter-live' : 'round-start.no-meter')}</p>
          )}
          <h2>{say('round-start.keys')}</h2>
          <KeyList keys={roundKeys.slice(0, 4)} />
        </div>
      </form>
    </Sheet>
  );
}
