import { create } from 'zustand';
import type { Settings } from '../../shared-core/contract/settings.ts';
import { bridge } from '../data/bridge.ts';
import { changedFields } from '../data/changed-fields.ts';

/** The settings in force; null until they were asked for. */
export const useSettings = create<{ settings: Settings | null }>()(() => ({ settings: null }));

export async function loadSettings(): Promise<void> {
  useSettings.setState({ settings: await bridge().query('settings.get', {}) });
}

/**
 * Shows the settings at once and saves those that changed.
 * @throws Refusal where they were not taken; then those before are shown again
 */
export async function saveSettings(settings: Settings): Promise<void> {
  const before = useSettings.getState().settings;
  useSettings.setState({ settings });
  try {
    const changed = changedFields(before ?? {}, settings);
    useSettings.setState({ settings: await bridge().command('settings.edit', changed) });
  } catch (refusal) {
    useSettings.setState({ settings: before });
    throw refusal;
  }
}

/** Metric until the person's choice is known. */
export const useUnits = (): Settings['units'] => useSettings(({ settings }) => settings?.units ?? 'metric');
