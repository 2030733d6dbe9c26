import type { StackVolume as Volume } from '../../../shared-core/contract/stack-volume.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { weightText } from '../../../shared-core/units/weight.ts';
import { pctWords } from '../../parts/McValue.tsx';
import { Failed, Loading, Sheet } from '../../parts/Screen.tsx';
import { useUnits } from '../../stores/settings.ts';
import { useAnswer } from '../../useAnswer.ts';
import './stack-volume.css';

/** What a stack amounts to: board feet, cubic metres, and mass now and when fit for its use. */
export function StackVolume({ stackId }: { stackId: number }) {
  const volume = useAnswer('stacks.volume', { id: stackId });
  const units = useUnits();
  return (
    <Sheet title="What it amounts to">
      {volume.error && <Failed sentence={volume.error} again={volume.again} />}
      {volume.loading && <Loading />}
      {volume.output && <Totals volume={volume.output} units={units} />}
    </Sheet>
  );
}

function Totals({ volume, units }: { volume: Volume; units: DisplayUnits }) {
  const { mass } = volume;
  const facts: [string, string][] =
    volume.measured === 0
      ? []
      : [
          ['Board feet, tallied', volume.boardFeet.toLocaleString('en', { maximumFractionDigits: 2 })],
          ['Cubic metres, tallied', `${volume.cubicMetres.toFixed(3)} m³`],
        ];
  if (mass) {
    const of = mass.boards === volume.boards ? '' : `, of ${mass.boards} boards`;
    facts.push(
      [`Mass now${of}`, weightText(mass.nowKg, units)],
      [`Mass at ${pctWords(volume.targetPct)} %, for ${volume.endUseName}`, weightText(mass.targetKg, units)],
    );
  }
  return (
    <>
      {facts.length > 0 && (
        <dl className="stack-volume">
          {facts.map(([label, value]) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      )}
      {volume.missing.length > 0 && (
        <ul className="stack-volume-missing">
          {volume.missing.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
    </>
  );
}
