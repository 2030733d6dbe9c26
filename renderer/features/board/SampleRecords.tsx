import { useState } from 'react';
import type {
  SampleBoardState,
  SampleRecord,
  SampleSection,
} from '../../../shared-core/contract/sample-board.ts';
import type { Exclusion } from '../../../shared-core/probing/readings/exclusion.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { ExcludeButton } from '../records/ExcludeButton.tsx';
import { exclusionText } from '../records/exclusion-text.ts';
import { DrySectionForm } from './DrySectionForm.tsx';

type Open = { section: SampleSection; sectionName: string };

/** What was weighed: the cuts with their sections, and the board's weights since. */
export function SampleRecords({ state }: { state: SampleBoardState }) {
  const [open, setOpen] = useState<Open | null>(null);
  const close = () => setOpen(null);
  return (
    <>
      <ul className="sample-records">
        {state.cuts.map((cut) => (
          <li key={`cut ${cut.id}`} className={cut.excluded === null ? '' : 'sample-excluded'}>
            <Cut cut={cut} onOpen={setOpen} />
          </li>
        ))}
        {state.weights.map((weight) => (
          <li key={`weight ${weight.id}`} className={weight.excluded === null ? '' : 'sample-excluded'}>
            <Weight weight={weight} />
          </li>
        ))}
      </ul>
      {open && <DrySectionForm {...open} onClose={close} />}
    </>
  );
}

function Cut({ cut, onOpen }: { cut: SampleBoardState['cuts'][number]; onOpen: (open: Open) => void }) {
  const { say, formats } = useWords();
  const { boardKg, estimate, excluded } = cut;
  const cutName = say('weights.cut-name', { cutOn: cut.at });
  return (
    <>
      <div className="sample-line">
        <span className="sample-when">{formats.dateTime(cut.at)}</span>
        <span>
          {say('weights.sections-cut', { boardKg })}
          {estimate && (
            <>
              {' · '}
              <strong>
                {estimate.standardErrorPct === null
                  ? formats.mc(estimate.mcWhenCutPct)
                  : say('weights.mc-error', {
                      mcPct: estimate.mcWhenCutPct,
                      errorPoints: estimate.standardErrorPct,
                    })}
              </strong>
              {' · '}
              {say('weights.oven-dry', { ovenDryKg: estimate.ovenDryKg })}
            </>
          )}
          {excluded !== null && ` · ${say('exclude.excluded', { reason: exclusionText(excluded, say) })}`}
        </span>
        <ExcludeRecord record={{ what: 'cut', id: cut.id }} name={cutName} excluded={excluded} />
      </div>
      {cut.sections.map((section, index) => {
        const number = index + 1;
        const isWet = section.dryGrams === null;
        const sectionName = say('weights.section-of-cut', { number, cutName });
        return (
          <div key={section.id} className="sample-line sample-section">
            <span>{say('weights.section', { number })}</span>
            <span className="tabular">
              {say('weights.wet', { wetGrams: section.wetGrams })}
              {' · '}
              {section.dryGrams === null
                ? say('weights.in-oven')
                : say('weights.dry', { dryGrams: section.dryGrams })}
            </span>
            {excluded === null && (
              <Button
                kind={isWet ? 'main' : 'quiet'}
                aria-label={say(isWet ? 'weights.weigh-dry-name' : 'weights.weigh-again-name', {
                  sectionName,
                })}
                onClick={() => onOpen({ section, sectionName: say('weights.section', { number }) })}
              >
                {say(isWet ? 'weights.weigh-dry' : 'weights.weigh-again')}
              </Button>
            )}
          </div>
        );
      })}
    </>
  );
}

function Weight({ weight }: { weight: SampleBoardState['weights'][number] }) {
  const { say, formats } = useWords();
  const { excluded, mcPct } = weight;
  const shown = formats.weight(weight.kg);
  return (
    <div className="sample-line">
      <span className="sample-when">{formats.dateTime(weight.at)}</span>
      <span>
        {excluded === null ? shown : <s>{shown}</s>}
        {excluded !== null && ` · ${say('exclude.excluded', { reason: exclusionText(excluded, say) })}`}
        {excluded === null && mcPct !== null && (
          <>
            {' · '}
            <strong>{formats.mc(mcPct)}</strong>
          </>
        )}
      </span>
      <ExcludeRecord record={{ what: 'weight', id: weight.id }} name={shown} excluded={excluded} />
    </div>
  );
}

function ExcludeRecord({
  record,
  name,
  excluded,
}: {
  record: SampleRecord;
  name: string;
  excluded: Exclusion | null;
}) {
  return (
    <ExcludeButton
      recordName={name}
      excluded={excluded}
      reasons={['typing-slip', 'wrong-board', 'wet-with-rain']}
      onExclude={(why) => bridge().command('samples.exclude', { ...record, why })}
      onInclude={() => void attempt(bridge().command('samples.include', record))}
    />
  );
}
