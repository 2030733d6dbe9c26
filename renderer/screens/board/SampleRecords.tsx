import { useState } from 'react';
import type {
  SampleBoardState,
  SampleRecord,
  SampleSection,
} from '../../../shared-core/contract/sample-board.ts';
import type { Exclusion } from '../../../shared-core/probing/readings/exclusion.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { weightText } from '../../../shared-core/units/weight.ts';
import { bridge } from '../../bridge.ts';
import { Button } from '../../parts/Button.tsx';
import { dayTimeWords, dayWords } from '../../parts/days.ts';
import { ExcludeButton } from '../../parts/ExcludeButton.tsx';
import { exclusionText } from '../../parts/exclusion-text.ts';
import { pctWords } from '../../parts/McValue.tsx';
import { attempt } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';
import { DrySectionForm } from './DrySectionForm.tsx';

type Open = { section: SampleSection; name: string };

/** What was weighed: the cuts with their sections, and the board's masses since. */
export function SampleRecords({ state, units }: { state: SampleBoardState; units: DisplayUnits }) {
  const [open, setOpen] = useState<Open | null>(null);
  const close = () => setOpen(null);
  return (
    <>
      <ul className="sample-records">
        {state.cuts.map((cut) => (
          <li key={`cut ${cut.id}`} className={cut.excluded === null ? '' : 'sample-excluded'}>
            <Cut cut={cut} units={units} onOpen={setOpen} />
          </li>
        ))}
        {state.weights.map((weight) => (
          <li key={`mass ${weight.id}`} className={weight.excluded === null ? '' : 'sample-excluded'}>
            <Weight weight={weight} units={units} />
          </li>
        ))}
      </ul>
      {open && <DrySectionForm section={open.section} name={open.name} onClose={close} />}
    </>
  );
}

function Cut({
  cut,
  units,
  onOpen,
}: {
  cut: SampleBoardState['cuts'][number];
  units: DisplayUnits;
  onOpen: (open: Open) => void;
}) {
  const { say } = useWords();
  const name = `the cut of ${dayWords(cut.at)}`;
  return (
    <>
      <div className="sample-line">
        <span className="sample-when">{dayTimeWords(cut.at)}</span>
        <span>
          {weightText(cut.boardKg, units)}, sections cut
          {cut.estimate && (
            <>
              : <strong>{pctWords(cut.estimate.mcWhenCutPct)} %</strong>
              {cut.estimate.standardErrorPct !== null && ` ± ${pctWords(cut.estimate.standardErrorPct)}`},
              oven-dry {weightText(cut.estimate.ovenDryKg, units)}
            </>
          )}
          {cut.excluded !== null && `; excluded: ${exclusionText(cut.excluded, say)}`}
        </span>
        <ExcludeRecord record={{ what: 'cut', id: cut.id }} name={name} excluded={cut.excluded} />
      </div>
      {cut.sections.map((section, index) => (
        <div key={section.id} className="sample-line sample-section">
          <span>Section {index + 1}</span>
          <span className="tabular">
            {section.wetGrams} g wet,{' '}
            {section.dryGrams === null ? 'in the oven' : `${section.dryGrams} g oven-dry`}
          </span>
          {cut.excluded === null && (
            <Button
              kind={section.dryGrams === null ? 'main' : 'quiet'}
              aria-label={`${section.dryGrams === null ? 'It is dry' : 'Weigh again'}: section ${index + 1} of ${name}`}
              onClick={() => onOpen({ section, name: `Section ${index + 1}` })}
            >
              {section.dryGrams === null ? 'It is dry' : 'Weigh again'}
            </Button>
          )}
        </div>
      ))}
    </>
  );
}

function Weight({ weight, units }: { weight: SampleBoardState['weights'][number]; units: DisplayUnits }) {
  const { say } = useWords();
  const shown = weightText(weight.kg, units);
  return (
    <div className="sample-line">
      <span className="sample-when">{dayTimeWords(weight.at)}</span>
      <span>
        {weight.excluded === null ? shown : <s>{shown}</s>}
        {weight.excluded !== null && `; excluded: ${exclusionText(weight.excluded, say)}`}
        {weight.excluded === null && weight.mcPct !== null && (
          <>
            : <strong>{pctWords(weight.mcPct).replace('-', '−')} %</strong>
          </>
        )}
      </span>
      <ExcludeRecord record={{ what: 'weight', id: weight.id }} name={shown} excluded={weight.excluded} />
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
      reasons={['exclusion.typing-slip', 'exclusion.wrong-board', 'exclusion.wet-with-rain']}
      onExclude={(why) => bridge().command('samples.exclude', { ...record, why })}
      onInclude={() => void attempt(bridge().command('samples.include', record))}
    />
  );
}
