import { useState } from 'react';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Banner } from '../../parts/Banner.tsx';
import { Actions, Button, ButtonLink } from '../../parts/Button.tsx';
import { Select } from '../../parts/Field.tsx';
import { EmptyState, Failed, Loading, Screen, Sheet } from '../../parts/Screen.tsx';
import { TemperatureField } from '../../parts/TemperatureField.tsx';
import { readTemperature } from '../../parts/wood-temp.ts';
import { useMeter } from '../../stores/meter.ts';
import { go, hrefOf } from '../../stores/navigation.ts';
import { attempt } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import './round.css';

/** Which stack, and how warm the wood is; then off. */
export function RoundStartScreen({ stackId }: { stackId: number | null }) {
  const stacks = useQuery('stacks.list', {});
  return (
    <Screen title="Start a round" lead="One walk over a stack’s boards with the meter.">
      {stacks.error && <Failed sentence={stacks.error} again={stacks.again} />}
      {stacks.loading && <Loading />}
      {stacks.output && <Start stacks={stacks.output} stackId={stackId} />}
    </Screen>
  );
}

function Start({ stacks, stackId }: { stacks: StackRow[]; stackId: number | null }) {
  const units = useUnits();
  const withBoards = stacks.filter((stack) => stack.boards > 0);
  const [chosen, setChosen] = useState(stackId ?? withBoards[0]?.id ?? null);
  const [temperature, setTemperature] = useState<{ typed: number | null; unknown: boolean }>({
    typed: null,
    unknown: false,
  });
  const [problem, setProblem] = useState<Message | null>(null);
  const isLive = useMeter((meter) => meter.state?.phase === 'live');
  const [starting, setStarting] = useState(false);
  const stack = withBoards.find((each) => each.id === chosen);

  if (withBoards.length === 0) {
    return (
      <EmptyState sentence="No stack has boards yet. Add a stack and its boards; then they can be probed.">
        <ButtonLink kind="main" href={hrefOf({ name: 'stacks' })}>
          Go to the stacks
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
            label="Stack"
            value={chosen === null ? '' : String(chosen)}
            options={[
              ...(stack ? [] : [{ value: '', label: 'Choose a stack' }]),
              ...withBoards.map((each) => ({
                value: String(each.id),
                label: `${each.name} (${each.boards} boards, ${each.placeName})`,
              })),
            ]}
            onValue={(value) => setChosen(value === '' ? null : Number(value))}
          />
          {stack?.openRoundId ? (
            <>
              <p>A round on this stack was begun and not finished. Its readings are kept.</p>
              <Actions>
                <ButtonLink kind="main" href={hrefOf({ name: 'round', id: stack.openRoundId })}>
                  Take it up again
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
                  Start the round
                </Button>
              </Actions>
            </>
          )}
        </div>
        <div className="round-start-part">
          <Banner kind="caution">
            Pins are sharp and break under side load. Push them straight in, keep your other hand off the line
            of the pins, and cap them between boards. Make sure that the pile stands firm before you climb or
            lift.
          </Banner>
          <p>
            {isLive
              ? 'The meter is live: push the pins in, hold still, and the value is kept when it settles.'
              : 'No meter is live: you will type the values. A meter can be connected at any time.'}
          </p>
          <p>
            In the round <kbd className="key">Space</kbd> keeps a value at once, <kbd className="key">⌫</kbd>{' '}
            sets the last one aside, <kbd className="key">Enter</kbd> goes to the next board,{' '}
            <kbd className="key">?</kbd> lists the other keys.
          </p>
        </div>
      </form>
    </Sheet>
  );
}
