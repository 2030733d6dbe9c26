import { useEffect, useRef, useState } from 'react';
import { z } from 'zod';
import type { CheckedMeter, MeterCheck } from '../../../shared-core/contract/meter-checks.ts';
import { woodTempSchema } from '../../../shared-core/contract/round.ts';
import { says } from '../../../shared-core/contract/validation.ts';
import { bridge } from '../../data/bridge.ts';
import { NumberField } from '../../form/Field.tsx';
import { OhmsField, TempField } from '../../form/MeasureFields.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useSaving } from '../../form/useSaving.ts';
import { isLiveHere, useMeter } from '../../stores/meter.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { PhaseMark } from '../../ui/PhaseMark.tsx';
import { useWords } from '../../words.ts';
import { CheckResult } from './CheckResult.tsx';

const wrong = says('meter-check.wrong-number');
const typedSchema = z.object({
  shown: z.number(wrong).positive(wrong).max(1e15, wrong),
  tempC: woodTempSchema,
});

/** Takes what a meter shows on its block: the settled value of one that is connected, else what is typed. */
export function CheckDialog({ of, onClose }: { of: CheckedMeter; onClose: () => void }) {
  const { say } = useWords();
  const { block, meterName } = of;
  const isConnected = useMeter(
    (meter) => isLiveHere(meter) && meter.state?.meterId === block.meterId && meter.state.toConfirm === null,
  );
  const [isTyped, setTyped] = useState(false);
  const [found, setFound] = useState<MeterCheck | null>(null);
  const answers = useDraft(typedSchema, { shown: null, tempC: null });
  const { busy, problem, save, form } = useSaving(() => undefined);
  const take = (shown: number, tempC: number | null) =>
    save(async () =>
      setFound(await bridge().command('meterChecks.add', { blockId: block.id, shown, tempC })),
    );
  const { tempC } = answers.draft;
  return (
    <Dialog title={say('meter-check.of', { meterName })} onClose={onClose}>
      {found ? (
        <CheckResult {...{ of, found, onClose }} onAgain={() => setFound(null)} />
      ) : (
        <form
          ref={form}
          className="column"
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            event.stopPropagation();
            void save(async () => {
              const typed = answers.read();
              setFound(await bridge().command('meterChecks.add', { blockId: block.id, ...typed }));
            });
          }}
        >
          <p>{say('meter-check.hold', { blockName: block.name })}</p>
          <p className="soft">{say('meter-check.caution')}</p>
          {isConnected && !isTyped ? (
            <Live
              onSettled={(shown) => void take(shown, tempC !== null && !Number.isNaN(tempC) ? tempC : null)}
            />
          ) : of.unit === 'ohm' ? (
            <OhmsField label={say('meter-check.type')} {...answers.field('shown')} />
          ) : (
            <NumberField label={say('meter-check.type')} unit="%" {...answers.field('shown')} />
          )}
          <TempField label={say('meter-check.temperature')} {...answers.field('tempC')} />
          {problem && <Banner kind="problem">{problem.sentence}</Banner>}
          <Actions>
            {isConnected && !isTyped ? (
              <Button onClick={() => setTyped(true)}>{say('meter-check.type-instead')}</Button>
            ) : (
              <Button kind="main" type="submit" aria-disabled={busy}>
                {say('meter-check.save')}
              </Button>
            )}
            <Button onClick={onClose}>{say('common.cancel')}</Button>
          </Actions>
        </form>
      )}
    </Dialog>
  );
}

/**
 * The live value, until it has settled. Pins that were in already may be in a board: only what they show after they were
 * out, or once a person says where they are, is of the block.
 */
function Live({ onSettled }: { onSettled: (shown: number) => void }) {
  const { say, formats } = useWords();
  const live = useMeter((meter) => meter.live);
  const isTaken = useRef(false);
  const phase = live?.phase ?? 'pins-out';
  const [isOnBlock, setOnBlock] = useState(false);
  if (live?.phase === 'pins-out' && !isOnBlock) setOnBlock(true);
  const settled = isOnBlock && live?.phase === 'settled' ? live.raw : null;
  const told = useRef(onSettled);
  told.current = onSettled;
  useEffect(() => {
    if (settled === null || isTaken.current) return;
    isTaken.current = true;
    told.current(settled);
  }, [settled]);
  return (
    <>
      <PhaseMark phase={phase} />
      <p className="meter-live-value">
        <strong>{live?.raw === null || live === null ? '–' : rawText(live.raw, live.unit, formats)}</strong>
      </p>
      {phase === 'pins-out' && <p>{say('meter-check.no-number')}</p>}
      {phase !== 'pins-out' && !isOnBlock && (
        <Banner actions={<Button onClick={() => setOnBlock(true)}>{say('meter-check.is-on')}</Button>}>
          {say('meter-check.lift')}
        </Banner>
      )}
    </>
  );
}
