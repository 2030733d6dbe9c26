import { useWords } from '../../words.ts';

const steps = [
  { fromDbm: -60, code: 'meter.signal.strong', bars: 4 },
  { fromDbm: -72, code: 'meter.signal.good', bars: 3 },
  { fromDbm: -84, code: 'meter.signal.weak', bars: 2 },
  { fromDbm: Number.NEGATIVE_INFINITY, code: 'meter.signal.very-weak', bars: 1 },
] as const;

/** Signal strength in words, bars and dBm; null where the adapter does not report it. The steps are common practice, no source. */
export function Signal({ rssiDbm }: { rssiDbm: number | null }) {
  const { say } = useWords();
  if (rssiDbm === null) return <small>{say('meter.signal.unknown')}</small>;
  const step = steps.find(({ fromDbm }) => rssiDbm >= fromDbm) ?? steps[3];
  return (
    <small className="marked signal">
      <svg viewBox="0 0 22 16" aria-hidden="true">
        {[1, 2, 3, 4].map((bar) => (
          <rect
            key={bar}
            x={(bar - 1) * 6}
            y={16 - bar * 4}
            width="4"
            height={bar * 4}
            fill={bar <= step.bars ? 'var(--ink)' : 'none'}
            stroke="var(--line-strong)"
          />
        ))}
      </svg>
      {say('meter.signal', { strength: { code: step.code }, dbm: Math.round(rssiDbm) })}
    </small>
  );
}
