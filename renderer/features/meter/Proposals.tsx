import { decodePacket } from '../../../shared-core/gatt/packet.ts';
import type { ShownNumber } from '../../../shared-core/gatt/shown-number.ts';
import { placeOf } from '../../../shared-core/gatt/value.ts';
import type { Formats } from '../../../shared-core/words/formats.ts';
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
  numbers,
  textOf,
  showsBytes,
  onChoose,
}: {
  found: readonly Found[];
  chosen: Found | null;
  /** As they were typed. */
  numbers: readonly ShownNumber[];
  textOf: (number: ShownNumber) => string;
  showsBytes: boolean;
  onChoose: (key: string) => void;
}) {
  const { say, formats } = useWords();
  if (chosen === null) return <Banner kind="caution">{say('watch.none-fits')}</Banner>;
  const { isSure, isEnough, follows } = chosen.proposal;
  const texts = found.map((each) => shownNow(each, formats));
  const misfit = numbers.find((_, at) => follows[at] === false);
  return (
    <>
      <Choice
        label={say('watch.found')}
        isList
        value={chosen.key}
        options={found.map((each, at) => ({
          value: each.key,
          label: (
            <ProposedNumber
              found={each}
              showsBytes={showsBytes}
              isNamed={texts.some((text, other) => other !== at && text === texts[at])}
            />
          ),
        }))}
        onValue={onChoose}
      />
      {misfit ? (
        <Banner kind="caution">{say('watch.misfit', { shown: textOf(misfit) })}</Banner>
      ) : isSure ? (
        <Banner kind="done">{say('watch.sure')}</Banner>
      ) : (
        <Banner>{say(isEnough ? 'watch.compare' : 'watch.more')}</Banner>
      )}
    </>
  );
}

function shownNow(found: Found, formats: Formats): string {
  const newest = newestOf(found);
  const value = newest && decodePacket(newest, found.description).value;
  return value?.ok ? rawText(value.value, found.proposal.unit, formats) : '–';
}

function ProposedNumber({
  found,
  showsBytes,
  isNamed,
}: {
  found: Found;
  showsBytes: boolean;
  /** By its format: another one shows the same number now. */
  isNamed: boolean;
}) {
  const { say, formats } = useWords();
  const { proposal } = found;
  const newest = newestOf(found);
  const typed = proposal.follows.length;
  const fitting = proposal.follows.filter(Boolean).length;
  return (
    <span className="proposed-number">
      <strong>{shownNow(found, formats)}</strong>{' '}
      <span className="soft">
        {fitting === typed ? say('watch.fit.all', { typed }) : say('watch.fit.some', { fitting, typed })}
        {isNamed && !showsBytes && ` (${say(layoutName(proposal.value))})`}
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
