import { type Message, message } from '../../../shared-core/words/message.ts';
import { Choice } from '../../form/Choice.tsx';
import { Checkbox } from '../../form/Field.tsx';
import { useWords } from '../../words.ts';
import { EpwField } from './EpwField.tsx';
import { AirOfYear, MonthsOfAir } from './MonthsOfAir.tsx';
import type { PlaceAirDraft } from './place-draft.ts';
import { StationField } from './StationField.tsx';

const ways = { station: 'stations.nearest', file: 'epw.label', own: 'places.type-months' } as const;

/** Where a place's air comes from: a station, a weather file, or months that are typed. */
export function PlaceAirFields({
  draft,
  problem,
  shown,
  onDraft,
}: {
  draft: PlaceAirDraft;
  /** Of the months that were typed, once it is to be shown. */
  problem: { problem: Message; wrongMonth: number } | null;
  /** Whether what is missing is to be shown. */
  shown: boolean;
  onDraft: (draft: PlaceAirDraft) => void;
}) {
  const { say, formats } = useWords();
  const change = (changed: Partial<PlaceAirDraft>): void => onDraft({ ...draft, ...changed });
  return (
    <>
      <Choice
        label={say('places.air-source')}
        value={draft.way}
        options={(['station', 'file', 'own'] as const).map((value) => ({ value, label: say(ways[value]) }))}
        onValue={(way) => change({ way })}
      />
      {draft.way === 'station' && (
        <StationField text={draft.station} onText={(station) => change({ station })} />
      )}
      {draft.way === 'file' && (
        <EpwField
          file={draft.file}
          missing={shown ? message('epw.missing') : null}
          onFile={(file) => change({ file })}
        />
      )}
      {draft.way === 'own' && (
        <>
          <Checkbox
            label={say('places.same-all-year')}
            hint={say('places.same-all-year-hint')}
            checked={draft.sameAllYear}
            onChecked={(sameAllYear) => change({ sameAllYear })}
          />
          {draft.sameAllYear ? (
            <AirOfYear
              air={draft.months[0]}
              wrong={problem !== null}
              onAir={(air) => change({ months: draft.months.map(() => air) })}
            />
          ) : (
            <MonthsOfAir
              months={draft.months}
              wrongMonth={problem?.wrongMonth ?? null}
              onMonths={(months) => change({ months })}
            />
          )}
          {problem && (
            <p className="field-error">
              {draft.sameAllYear
                ? say(problem.problem)
                : say('places.month-problem', {
                    monthName: formats.month(problem.wrongMonth + 1),
                    problem: problem.problem,
                  })}
            </p>
          )}
        </>
      )}
    </>
  );
}
