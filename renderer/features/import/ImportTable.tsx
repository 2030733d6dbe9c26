import { useEffect, useState } from 'react';
import {
  answerFor,
  type ColumnChoice,
  type ImportChoices,
  importKindSchema,
  nameKey,
  nothingChosen,
} from '../../../shared-core/contract/import.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { importedParts } from '../../../shared-core/import/imported.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Checkbox, Select } from '../../form/Field.tsx';
import { go } from '../../stores/navigation.ts';
import { attempt, sentenceOf, tellDone } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { DayOrderChoice } from '../stacks/DayOrderChoice.tsx';
import { ImportColumns } from './ImportColumns.tsx';
import { ImportDefaults } from './ImportDefaults.tsx';
import type { ReadTable } from './ImportScreen.tsx';
import { NEW_PLACE, newOutdoors } from './new-place.ts';
import { RefusedRows } from './RefusedRows.tsx';
import { ownOrder } from './reader.ts';
import { SpeciesOfName } from './SpeciesOfName.tsx';
import { whyNothing } from './why-nothing.ts';

/** With how many rows that do not go in come before those that it shows, and of which choices it tells. */
type Checked = RequestOutput<'imports.check'> & { from: number; asked: string };
/** A person goes on choosing for so long before it is checked again. */
const SETTLES_MS = 250;

/** How a table is read, what of it goes in, and what does not. */
export function ImportTable({ table, onClose }: { table: ReadTable; onClose: () => void }) {
  const { say } = useWords();
  const units = useUnits();
  const species = useQuery('species.list', {});
  const places = useQuery('places.list', {});
  const [shown, setShown] = useState<Pick<ReadTable, 'heads' | 'sample'>>(table);
  const [choices, setChoices] = useState<ImportChoices>({
    ...table.guessed,
    ...nothingChosen,
    stackName: table.fileName?.replace(/\.\w+$/, '').slice(0, 80) || say('import.stack-default'),
  });
  const set = (changed: Partial<ImportChoices>) => setChoices((now) => ({ ...now, ...changed }));
  const [checked, setChecked] = useState<Checked | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  /** A refused import is checked again: the yard may have changed meanwhile. */
  const [refusals, setRefusals] = useState(0);
  const [refusedFrom, setRefusedFrom] = useState(0);
  const saving = useLongWork();

  // Where there is one place, it is that one.
  const [onlyPlace] = places.output?.length === 1 ? places.output : [];
  const used: ImportChoices =
    choices.place === null && onlyPlace ? { ...choices, place: { placeId: onlyPlace.id } } : choices;
  const asked = JSON.stringify(used);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each refusal asks once more.
  useEffect(() => {
    let isOld = false;
    const timer = setTimeout(() => {
      bridge()
        .command('imports.check', { table: table.table, choices: JSON.parse(asked), refusedFrom })
        .then(
          (came) => {
            if (isOld) return;
            setChecked({ ...came, from: refusedFrom, asked });
            // Those that were shown last may go in now.
            if (refusedFrom > 0 && refusedFrom >= came.refused) setRefusedFrom(0);
            setProblem(null);
          },
          (error) => !isOld && setProblem(sentenceOf(error)),
        );
    }, SETTLES_MS);
    return () => {
      isOld = true;
      clearTimeout(timer);
    };
  }, [asked, table.table, refusals, refusedFrom]);

  async function guessAgain(changed: Partial<Pick<ImportChoices, 'kind' | 'headerRow' | 'decimalMark'>>) {
    const { kind, headerRow, decimalMark } = { ...choices, ...changed };
    const asking = { table: table.table, kind, headerRow, decimalMark, units, order: ownOrder() };
    const { guessed, heads, sample } = await bridge().command('imports.guess', asking);
    setShown({ heads, sample });
    set(guessed);
  }
  async function answerPlace(name: string, id: number): Promise<void> {
    const meant = id === NEW_PLACE ? { add: await newOutdoors() } : { placeId: id };
    setChoices((now) => ({ ...now, placesOfNames: { ...now.placesOfNames, [nameKey(name)]: meant } }));
  }
  async function save({ plan, refused, leftOut }: Checked): Promise<void> {
    const saved = await saving
      .run(
        (work) => bridge().command('imports.save', { plan, fileName: table.fileName, work }),
        say('import.stopped'),
      )
      .catch((error) => {
        setRefusals((refused) => refused + 1);
        throw error;
      });
    if (!saved) return;
    // A notice goes with its page.
    go(choices.kind === 'air' ? { name: 'places' } : { name: 'stacks' });
    const facts = { parts: importedParts(saved.counts), leftOut: refused + leftOut };
    tellDone(say(saved.isRestored ? 'import.restored' : 'import.done', facts));
  }

  const isAny = checked !== null && Object.values(checked.counts).some((count) => count > 0);
  // What was chosen or fixed a moment ago is not in what was checked.
  const isChecking = checked?.asked !== asked && problem === null;
  return (
    <>
      <Sheet
        title={say('import.how-read')}
        actions={<Button onClick={onClose}>{say('import.other-file')}</Button>}
      >
        {table.reshaped && <p>{say(`import.reshaped.${table.reshaped}`)}</p>}
        <div className="form-grid">
          <Select
            label={say('import.kind')}
            value={choices.kind}
            options={importKindSchema.options.map((value) => ({ value, label: say(`import.kind.${value}`) }))}
            onValue={(kind) => attempt(guessAgain({ kind }))}
          />
          <Select
            label={say('import.header-row')}
            value={choices.headerRow}
            options={[
              { value: null, label: say('import.no-header') },
              ...Array.from({ length: Math.min(20, table.rows) }, (_, row) => ({
                value: row,
                label: say('import.line', { line: row + 1 }),
              })),
            ]}
            onValue={(headerRow) => attempt(guessAgain({ headerRow }))}
          />
          <Select
            label={say('import.decimal-mark')}
            value={choices.decimalMark}
            options={[
              { value: '.', label: say('import.decimal-point') },
              { value: ',', label: say('import.decimal-comma') },
            ]}
            onValue={(decimalMark) => set({ decimalMark })}
          />
        </div>
        <ImportColumns
          choices={choices}
          shown={shown}
          onColumn={(index: number, changed: Partial<ColumnChoice>) =>
            set({
              columns: choices.columns.map((column, at) =>
                at === index ? { ...column, ...changed } : column,
              ),
            })
          }
        />
      </Sheet>
      <ImportDefaults choices={used} onChoices={set} />
      {checked && checked.speciesNames.length + checked.unknownPlaces.length > 0 && (
        <Sheet title={say('import.names')}>
          {checked.speciesNames.length > 0 && <p>{say('import.names-lead')}</p>}
          <div className="form-grid">
            {checked.speciesNames.map(({ name, rows, speciesId }) => (
              <SpeciesOfName
                key={name}
                name={name}
                rows={rows}
                allSpecies={species.output ?? []}
                value={answerFor(choices.speciesOfNames, name) ?? speciesId ?? ''}
                onValue={(id) => set({ speciesOfNames: { ...choices.speciesOfNames, [nameKey(name)]: id } })}
              />
            ))}
            {checked.unknownPlaces.map(({ name, rows }) => (
              <Select<number | null>
                key={name}
                label={say('import.name-in-rows', { name, rows })}
                value={null}
                options={[
                  { value: null, label: say('stacks.choose-place') },
                  ...(places.output ?? []).map((place) => ({
                    value: place.id,
                    label: place.name,
                    isName: true,
                  })),
                  { value: NEW_PLACE, label: say('import.new-place') },
                ]}
                onValue={(id) => id !== null && attempt(answerPlace(name, id))}
              />
            ))}
          </div>
        </Sheet>
      )}
      <Sheet title={say('import.what-goes-in')}>
        {problem && <Banner kind="problem">{problem}</Banner>}
        {checked?.problems.map((each) => (
          <Banner key={JSON.stringify(each)} kind="caution">
            {say(each)}
          </Banner>
        ))}
        {checked?.isOrderAsked && (
          <DayOrderChoice value={choices.order} onValue={(order) => set({ order })} />
        )}
        {checked && (isAny || checked.problems.length === 0) && (
          <p role="status">
            {isAny ? say('import.counts', checked.counts) : say(whyNothing(checked))}{' '}
            {checked.knownReadings > 0 && say('import.known-readings', { readings: checked.knownReadings })}
          </p>
        )}
        {checked && checked.firstRows.length > 0 && (
          <>
            <h3>{say('import.first-rows')}</h3>
            <ul>
              {checked.firstRows.map((each) => (
                <li key={JSON.stringify(each)}>{say(each)}</li>
              ))}
            </ul>
          </>
        )}
        {checked && checked.remarks.length > 0 && (
          <ul>
            {checked.remarks.map((each) => (
              <li key={JSON.stringify(each)}>{say(each)}</li>
            ))}
          </ul>
        )}
        {checked && checked.otherInYard > 0 && (
          <Checkbox
            label={say('import.are-in-yard', { boards: checked.otherInYard })}
            checked={choices.areInYard}
            onChecked={(areInYard) => set({ areInYard })}
          />
        )}
        {checked && (
          <RefusedRows
            checked={checked}
            from={checked.from}
            choices={choices}
            heads={shown.heads}
            onChoices={set}
            onFrom={setRefusedFrom}
          />
        )}
        {saving.underWay ? (
          <WorkUnderWay label={say('import.saving')} {...saving.underWay} onCancel={saving.cancel} />
        ) : (
          <Actions>
            <Button
              kind="main"
              disabled={!isAny || checked.asked !== asked}
              onClick={() => checked && void attempt(save(checked))}
            >
              {isChecking
                ? say('import.checking')
                : isAny
                  ? say('import.save', { rows: checked.rows, leftOut: checked.refused + checked.leftOut })
                  : say('import.save-none')}
            </Button>
          </Actions>
        )}
      </Sheet>
    </>
  );
}
