import { useState } from 'react';
import { type Clash, type Merged, otherSide, type Side } from '../../../shared-core/contract/exchange.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { countsInWords } from '../../../shared-core/exchange/merge-counts.ts';
import { message } from '../../../shared-core/words/message.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { Choice } from '../../form/Choice.tsx';
import { tellDone } from '../../stores/notices.ts';
import { mergeYard } from '../../stores/yard.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import css from './files.module.css';

/** Shows what another yard would bring, and asks whose version of what both changed to use. */
export function BringInDialog({
  file,
  fileName,
  found,
  onClose,
}: {
  file: string;
  fileName: string;
  found: RequestOutput<'exchange.look'>;
  onClose: () => void;
}) {
  const { say } = useWords();
  const { clashes, clashCount } = found;
  const [rest, setRest] = useState<Side>('mine');
  const [others, setOthers] = useState<ReadonlySet<string>>(new Set());
  const merging = useLongWork();
  const all = (side: Side) => {
    setRest(side);
    setOthers(new Set());
  };
  const set = (id: string, side: Side) => {
    const changed = new Set(others);
    if (side === rest) changed.delete(id);
    else changed.add(id);
    setOthers(changed);
  };
  const opposite = otherSide(rest);
  const parts = countsInWords(found.added);
  const deleted = countsInWords(found.deleted);
  const records = parts.length + deleted.length + found.leaves.length + found.edited + clashCount;
  const isNothing = records + found.foundPictures === 0;
  const bringIn = async () => {
    const done = await merging.run(async (work) => {
      await mergeYard({ file, fileName, rest, others: [...others], work });
      return true;
    }, say('merge.stopped'));
    if (!done) return;
    tellDone(say('merge.done', { fileName }));
    onClose();
  };
  return (
    <Dialog title={say('merge.question', { fileName })} onClose={onClose}>
      {isNothing && <p>{say('merge.nothing')}</p>}
      {records === 0 && found.foundPictures > 0 && (
        <p>{say('merge.found-pictures', { pictures: found.foundPictures })}</p>
      )}
      {parts.length > 0 && <p>{say('merge.added', { parts })}</p>}
      {found.edited > 0 && <p>{say('merge.edited', { records: found.edited })}</p>}
      {deleted.length > 0 && <p>{say('merge.deleted', { parts: deleted })}</p>}
      <Leaving leaves={found.leaves} />
      {found.cuts.map((sentence) => (
        <Banner key={sentence.code} kind="caution">
          {say(sentence)}
        </Banner>
      ))}
      <OtherValues values={found.otherValues} count={found.otherValueCount} />
      <RenamedThere renamed={found.renamed} renamedCount={found.renamedCount} />
      {found.missingPictures > 0 && (
        <Banner kind="caution">{say('merge.missing-pictures', { pictures: found.missingPictures })}</Banner>
      )}
      {clashCount > 0 && (
        <section className="column">
          <h3>{say('merge.clashes')}</h3>
          <p>{say('merge.clashes-lead', { clashes: clashCount })}</p>
          <Actions>
            <Button onClick={() => all('mine')}>{say('merge.all-mine')}</Button>
            <Button onClick={() => all('theirs')}>{say('merge.all-theirs')}</Button>
          </Actions>
          {clashes.map((clash) => (
            <ClashChoice
              key={clash.id}
              clash={clash}
              side={others.has(clash.id) ? opposite : rest}
              onSide={(side) => set(clash.id, side)}
            />
          ))}
          {clashCount > clashes.length && (
            <p>{say('merge.more-clashes', { clashes: clashCount - clashes.length })}</p>
          )}
        </section>
      )}
      {!isNothing && <p>{say('merge.backup-first')}</p>}
      {merging.underWay ? (
        <WorkUnderWay
          label={say('merge.merging')}
          done={merging.underWay.done}
          total={merging.underWay.total}
          onCancel={merging.cancel}
        />
      ) : (
        <Actions>
          {!isNothing && (
            <Button kind="main" onClick={bringIn}>
              {say('merge.yes')}
            </Button>
          )}
          <Button onClick={onClose}>{say(isNothing ? 'common.close' : 'common.cancel')}</Button>
        </Actions>
      )}
    </Dialog>
  );
}

function RenamedThere({ renamed, renamedCount }: Pick<Merged, 'renamed' | 'renamedCount'>) {
  const { say } = useWords();
  if (renamed.length === 0) return null;
  return (
    <section>
      <h3>{say('merge.renamed')}</h3>
      <ul>
        {renamed.map(({ tableName, from, to }) => (
          <li key={`${tableName} ${to}`}>{say('merge.renamed-to', { fromText: from, toText: to })}</li>
        ))}
      </ul>
      {renamedCount > renamed.length && (
        <p>{say('merge.more-renamed', { names: renamedCount - renamed.length })}</p>
      )}
    </section>
  );
}

/** What goes out of the lists here, so that nobody misses it afterwards. */
function Leaving({ leaves }: Pick<Merged, 'leaves'>) {
  const { say } = useWords();
  if (leaves.length === 0) return null;
  return (
    <section>
      <h3>{say('merge.leaves')}</h3>
      <ul>
        {leaves.map((sentence) => (
          <li key={sentence.code}>{say(sentence)}</li>
        ))}
      </ul>
    </section>
  );
}

function OtherValues({ values, count }: { values: Merged['otherValues']; count: number }) {
  const { say } = useWords();
  if (count === 0) return null;
  return (
    <Banner kind="caution">
      <p>{say('merge.other-values', { records: count })}</p>
      <ul>
        {values.map((each) => (
          <li key={say(each)}>{say(each)}</li>
        ))}
      </ul>
    </Banner>
  );
}

/** Both versions of a record, and which of them to use. */
function ClashChoice({
  clash: { record, fields, ...became },
  side,
  onSide,
}: {
  clash: Clash;
  side: Side;
  onSide: (side: Side) => void;
}) {
  const { say } = useWords();
  const version = (of: Side) => (
    <span className={css.version}>
      <strong>{say(`merge.${of}`)}</strong>
      {became[of].map((sentence) => (
        <span key={say(sentence)}>{say(sentence)}</span>
      ))}
      {fields.map(({ label, [of]: value }) => (
        <span key={say(label)}>
          {say('merge.field-value', {
            field: label,
            value: value ?? message('merge.blank'),
          })}
        </span>
      ))}
    </span>
  );
  return (
    <Choice
      label={say('merge.use', { record })}
      value={side}
      options={(['mine', 'theirs'] as const).map((value) => ({ value, label: version(value) }))}
      onValue={onSide}
    />
  );
}
