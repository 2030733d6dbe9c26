import { useState } from 'react';
import type {
  SampleBoardState,
  SampleRecord,
  SampleSection,
} from '../../../shared-core/contract/sample-board.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { massText } from '../../../shared-core/units/mass.ts';
import { bridge } from '../../bridge.ts';
import { Button } from '../../parts/Button.tsx';
import { dayTimeWords, dayWords } from '../../parts/days.ts';
import { pctWords } from '../../parts/McValue.tsx';
import { SetAsideForm } from '../../parts/SetAsideForm.tsx';
import { attempt } from '../../stores/notices.ts';
import { DrySectionForm } from './DrySectionForm.tsx';

type Open =
  | { what: 'dry'; section: SampleSection; name: string }
  | { what: 'set-aside'; record: SampleRecord; name: string };

/** What was weighed: the cuts with their sections, and the board's masses since. */
export function SampleRecords({ state, units }: { state: SampleBoardState; units: DisplayUnits }) {
  const [open, setOpen] = useState<Open | null>(null);
  const close = () => setOpen(null);
  return (
    <>
      <ul className="sample-records">
        {state.cuts.map((cut) => (
          <li key={`cut ${cut.id}`} className={cut.setAside === null ? '' : 'sample-aside'}>
            <Cut cut={cut} units={units} onOpen={setOpen} />
          </li>
        ))}
        {state.masses.map((mass) => (
          <li key={`mass ${mass.id}`} className={mass.setAside === null ? '' : 'sample-aside'}>
            <Mass mass={mass} units={units} onOpen={setOpen} />
          </li>
        ))}
      </ul>
      {open?.what === 'dry' && <DrySectionForm section={open.section} name={open.name} onClose={close} />}
      {open?.what === 'set-aside' && (
        <SetAsideForm
          what={open.name}
          hint="Like: a slip of typing, another board, wet with rain."
          onWhy={(why) => bridge().call('samples.setAside', { ...open.record, why })}
          onClose={close}
        />
      )}
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
  const name = `the cut of ${dayWords(cut.at)}`;
  return (
    <>
      <div className="sample-line">
        <span className="sample-when">{dayTimeWords(cut.at)}</span>
        <span>
          {massText(cut.boardKg, units)}, sections cut
          {cut.estimate && (
            <>
              : <strong>{pctWords(cut.estimate.mcWhenCutPct)} %</strong>
              {cut.estimate.standardErrorPct !== null && ` ± ${pctWords(cut.estimate.standardErrorPct)}`},
              oven-dry {massText(cut.estimate.ovenDryKg, units)}
            </>
          )}
          {cut.setAside !== null && `; set aside: ${cut.setAside}`}
        </span>
        <SetAsideButton
          record={{ what: 'cut', id: cut.id }}
          name={name}
          setAside={cut.setAside}
          onOpen={onOpen}
        />
      </div>
      {cut.sections.map((section, index) => (
        <div key={section.id} className="sample-line sample-section">
          <span>Section {index + 1}</span>
          <span className="tabular">
            {section.wetGrams} g wet,{' '}
            {section.dryGrams === null ? 'in the oven' : `${section.dryGrams} g oven-dry`}
          </span>
          {cut.setAside === null && (
            <Button
              kind={section.dryGrams === null ? 'main' : 'quiet'}
              aria-label={`${section.dryGrams === null ? 'It is dry' : 'Weigh again'}: section ${index + 1} of ${name}`}
              onClick={() => onOpen({ what: 'dry', section, name: `Section ${index + 1}` })}
            >
              {section.dryGrams === null ? 'It is dry' : 'Weigh again'}
            </Button>
          )}
        </div>
      ))}
    </>
  );
}

function Mass({
  mass,
  units,
  onOpen,
}: {
  mass: SampleBoardState['masses'][number];
  units: DisplayUnits;
  onOpen: (open: Open) => void;
}) {
  const shown = massText(mass.kg, units);
  return (
    <div className="sample-line">
      <span className="sample-when">{dayTimeWords(mass.at)}</span>
      <span>
        {mass.setAside === null ? shown : <s>{shown}</s>}
        {mass.setAside !== null && `; set aside: ${mass.setAside}`}
        {mass.setAside === null && mass.mcPct !== null && (
          <>
            : <strong>{pctWords(mass.mcPct).replace('-', '−')} %</strong>
          </>
        )}
      </span>
      <SetAsideButton
        record={{ what: 'mass', id: mass.id }}
        name={shown}
        setAside={mass.setAside}
        onOpen={onOpen}
      />
    </div>
  );
}

function SetAsideButton({
  record,
  name,
  setAside,
  onOpen,
}: {
  record: SampleRecord;
  name: string;
  setAside: string | null;
  onOpen: (open: Open) => void;
}) {
  return setAside === null ? (
    <Button
      kind="quiet"
      aria-label={`Set aside ${name}`}
      onClick={() => onOpen({ what: 'set-aside', record, name })}
    >
      Set aside
    </Button>
  ) : (
    <Button
      kind="quiet"
      aria-label={`Put back ${name}`}
      onClick={() => void attempt(bridge().call('samples.putBack', record))}
    >
      Put back
    </Button>
  );
}
