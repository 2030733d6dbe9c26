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
import { RecordList, RecordValue } from '../records/RecordList.tsx';
import { DrySectionForm } from './DrySectionForm.tsx';

/** A row: a cut, one of its sections, or a weight of the board since. */
interface Row {
  key: string;
  what: string;
  at: string;
  weight: string;
  mc: string | null;
  /** As the question names it. */
  name: string;
  excluded: Exclusion | null;
  /** Null for a section, which is excluded with its cut. */
  record: SampleRecord | null;
  section: SampleSection | null;
}

/** What was weighed: the cuts with their sections, and the board's weights since. */
export function SampleRecords({ state }: { state: SampleBoardState }) {
  const { say, formats } = useWords();
  const [open, setOpen] = useState<{ section: SampleSection; sectionName: string } | null>(null);
  const cuts = state.cuts.flatMap(({ id, at, boardKg, estimate, excluded, sections }): Row[] => {
    const cutName = say('weights.cut-name', { cutOn: at });
    const cut: Row = {
      key: `cut ${id}`,
      what: say('weights.cut'),
      at,
      weight: say('weights.sections-cut', { boardKg }),
      mc:
        estimate &&
        (estimate.standardErrorPct === null
          ? formats.mc(estimate.mcWhenCutPct)
          : say('weights.mc-error', {
              mcPct: estimate.mcWhenCutPct,
              errorPoints: estimate.standardErrorPct,
            })),
      name: cutName,
      excluded,
      record: { what: 'cut', id },
      section: null,
    };
    return [
      cut,
      ...sections.map((section, index): Row => {
        const { wetGrams, dryGrams } = section;
        const dry = dryGrams === null ? say('weights.in-oven') : say('weights.dry', { dryGrams });
        return {
          key: `section ${section.id}`,
          what: say('weights.section', { number: index + 1 }),
          at,
          weight: `${say('weights.wet', { wetGrams })}, ${dry}`,
          mc: null,
          name: say('weights.section-of-cut', { number: index + 1, cutName }),
          excluded,
          record: null,
          section,
        };
      }),
    ];
  });
  const weights = state.weights.map(
    ({ id, at, kg, mcPct, excluded }): Row => ({
      key: `weight ${id}`,
      what: say('weights.weight'),
      at,
      weight: formats.weight(kg),
      mc: mcPct === null ? null : formats.mc(mcPct),
      name: formats.weight(kg),
      excluded,
      record: { what: 'weight', id },
      section: null,
    }),
  );
  return (
    <>
      <RecordList
        name={say('weights.title')}
        records={[...cuts, ...weights]}
        keyOf={({ key }) => key}
        columns={[
          { id: 'what', head: say('weights.what'), cell: ({ what }) => what },
          { id: 'at', head: say('weights.when'), cell: ({ at }) => formats.dateTime(at) },
          {
            id: 'weight',
            head: say('weights.weight'),
            cell: ({ weight, excluded }) => (excluded ? <s>{weight}</s> : weight),
          },
          {
            id: 'mc',
            head: say('reading.mc'),
            cell: ({ mc, excluded }) => mc && <RecordValue isUsed={excluded === null}>{mc}</RecordValue>,
          },
        ]}
        actionsOf={({ name, excluded, record, section, what }) => (
          <>
            {section && excluded === null && (
              <Button
                kind={section.dryGrams === null ? 'main' : 'quiet'}
                aria-label={say(
                  section.dryGrams === null ? 'weights.weigh-dry-name' : 'weights.weigh-again-name',
                  { sectionName: name },
                )}
                onClick={() => setOpen({ section, sectionName: what })}
              >
                {say(section.dryGrams === null ? 'weights.weigh-dry' : 'weights.weigh-again')}
              </Button>
            )}
            {record && (
              <ExcludeButton
                recordName={name}
                excluded={excluded}
                reasons={['typing-slip', 'wrong-board', 'wet-with-rain']}
                onExclude={(why) => bridge().command('samples.exclude', { ...record, why })}
                onInclude={() => void attempt(bridge().command('samples.include', record))}
              />
            )}
          </>
        )}
      />
      {open && <DrySectionForm {...open} onClose={() => setOpen(null)} />}
    </>
  );
}
