import { decodePacket } from '../../../shared-core/gatt/packet.ts';
import { placeOf } from '../../../shared-core/gatt/value.ts';
import { Choice } from '../../form/Choice.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { Bytes, hexOf, isIn } from './Bytes.tsx';
import { layoutName } from './formats.ts';
import { type Found, newestOf } from './found.ts';

/** Which number is the one on the display: each as it reads now, the likeliest first. */
export function Proposals({
  found,
  chosen,
  showsBytes,
  onChoose,
}: {
  found: readonly Found[];
  chosen: Found | null;
  showsBytes: boolean;
  onChoose: (key: string) => void;
}) {
  const { say } = useWords();
  if (found.length === 0) return <Banner kind="caution">{say('watch.none-fits')}</Banner>;
  const isSure = found[0]!.proposal.isSure;
  return (
    <>
      <Choice
        label={say('watch.found')}
        isList
        value={chosen?.key ?? null}
        options={found.map((each) => ({
          value: each.key,
          label: <ProposedNumber found={each} showsBytes={showsBytes} />,
        }))}
        onValue={onChoose}
      />
      <Banner kind={isSure ? 'done' : 'info'}>{say(isSure ? 'watch.sure' : 'watch.more')}</Banner>
    </>
  );
}

function ProposedNumber({ found, showsBytes }: { found: Found; showsBytes: boolean }) {
  const { say, formats } = useWords();
  const { description, proposal } = found;
  const newest = newestOf(found);
  const value = newest && decodePacket(newest, description).value;
  const typed = proposal.follows.length;
  const fitting = proposal.follows.filter(Boolean).length;
  return (
    <span className="proposed-number">
      <strong>{value?.ok ? rawText(value.value, proposal.unit, formats) : '–'}</strong>{' '}
      <span className="soft">
        {fitting === typed ? say('watch.fit.all', { typed }) : say('watch.fit.some', { fitting, typed })}
      </span>
      {showsBytes && newest && (
        <span className="place-bytes">
          {say(layoutName(proposal.value))}
          <Bytes hex={hexOf(newest)} marked={isIn(placeOf(proposal.value))} />
        </span>
      )}
    </span>
  );
}
