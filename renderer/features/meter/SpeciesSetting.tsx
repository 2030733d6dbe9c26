import type { MeterState } from '../../../shared-core/contract/meter.ts';
import { Banner } from '../../ui/Banner.tsx';
import { useWords } from '../../words.ts';

/** What a meter that says so is set to. Another setting than it was described at makes other numbers of the same wood. */
export function SpeciesSetting({ state, onlyWrong = false }: { state: MeterState; onlyWrong?: boolean }) {
  const { say } = useWords();
  const { description, speciesSetting: setting } = state;
  const expected = description?.fields.species?.expected ?? null;
  if (setting === null) return null;
  if (expected !== null && setting !== expected) {
    return <Banner kind="caution">{say('meter.live.setting-differs', { setting, expected })}</Banner>;
  }
  return onlyWrong ? null : <p>{say('meter.live.setting', { setting })}</p>;
}
