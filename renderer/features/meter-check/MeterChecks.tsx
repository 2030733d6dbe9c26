import { useState } from 'react';
import type { MeterOfYard } from '../../../shared-core/contract/meter.ts';
import type { CheckedMeter } from '../../../shared-core/contract/meter-checks.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';
import { BlockForm } from './BlockForm.tsx';
import { CheckChart } from './CheckChart.tsx';
import { CheckDialog } from './CheckDialog.tsx';
import { CheckTable } from './CheckTable.tsx';
import { CorrectOffer } from './CorrectOffer.tsx';
import { checkSentence } from './check-sentence.ts';

/** Whether a meter is right: its test blocks, and its checks. */
export function MeterChecks({ meter, checked }: { meter: MeterOfYard; checked: readonly CheckedMeter[] }) {
  const { say } = useWords();
  const [isAdding, setAdding] = useState(false);
  const { id: meterId, name: meterName } = meter;
  const own = checked.filter(({ block }) => block.meterId === meterId);
  return (
    <>
      {own.map((each) => (
        <OneBlock key={each.block.id} meter={meter} of={each} />
      ))}
      {own.length === 0 && (
        <p>
          <span className="soft">{say('test-block.none')}</span>{' '}
          <Button
            kind="quiet"
            aria-label={say('test-block.add-named', { meterName })}
            onClick={() => setAdding(true)}
          >
            {say('test-block.add')}
          </Button>
        </p>
      )}
      {isAdding && <BlockForm meter={meter} block={null} onClose={() => setAdding(false)} />}
    </>
  );
}

function OneBlock({ meter, of }: { meter: MeterOfYard; of: CheckedMeter }) {
  const { say, formats } = useWords();
  const [open, setOpen] = useState<'edit' | 'check' | null>(null);
  const [isLater, setLater] = useState(false);
  const { block, unit, right, checks, last, toCorrect } = of;
  const { name: meterName } = meter;
  const { id, version, name: blockName, tolerance } = block;
  async function remove(): Promise<void> {
    if (await attempt(bridge().command('testBlocks.close', { id, basedOn: version })))
      tellDone(say('test-block.removed', { blockName }));
  }
  return (
    <section className="column" aria-label={say('meter-check.list', { meterName })}>
      <p>
        {right === null
          ? say('test-block.is-unknown', { meterName, blockName })
          : unit === 'pct'
            ? say('test-block.is.pct', { blockName, rightPct: right, tolerancePoints: tolerance })
            : say('test-block.is.ohm', { blockName, rightOhm: right, toleranceSharePct: 100 * tolerance })}
      </p>
      {last === null ? (
        <p>{say(checks.length === 0 ? 'meter-check.none' : 'meter-check.none-used')}</p>
      ) : (
        <Banner kind={last.state === 'right' ? 'done' : 'caution'}>
          <p>
            {formats.dateTime(last.at)}: {checkSentence(last, unit, say)}
          </p>
          {last.state === 'too-far' && <p>{say('meter-check.far')}</p>}
          {last.state === 'off' && toCorrect === null && <p>{say('meter-check.corrected')}</p>}
        </Banner>
      )}
      {last && toCorrect && !isLater && (
        <CorrectOffer
          {...toCorrect}
          rightValue={rawText(last.right, unit, formats)}
          onNotNow={() => setLater(true)}
        />
      )}
      <Actions>
        {right !== null && (
          <Button aria-label={say('meter-check.of', { meterName })} onClick={() => setOpen('check')}>
            {say('meter-check.press')}
          </Button>
        )}
        <Button
          kind="quiet"
          aria-label={say('test-block.edit-named', { blockName })}
          onClick={() => setOpen('edit')}
        >
          {say('common.edit')}
        </Button>
        <Button kind="quiet" aria-label={say('test-block.remove-named', { blockName })} onClick={remove}>
          {say('test-block.remove')}
        </Button>
      </Actions>
      {checks.length > 0 && (
        <Unfold words={say('meter-check.all', { checks: checks.length })}>
          <div className="column">
            {checks.length > 1 && <CheckChart meterName={meterName} of={of} />}
            <CheckTable meterName={meterName} of={of} />
          </div>
        </Unfold>
      )}
      {open === 'edit' && <BlockForm meter={meter} block={block} onClose={() => setOpen(null)} />}
      {open === 'check' && <CheckDialog of={of} onClose={() => setOpen(null)} />}
    </section>
  );
}
