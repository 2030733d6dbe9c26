import { create } from 'zustand';
import type { Settings } from '../../shared-core/contract/settings.ts';
import { bridge } from '../bridge.ts';

/** The settings in force; null until they were asked for. */
export const useSettings = create<{ settings: Settings | null }>()(() => ({ settings: null }));

export async function loadSettings(): Promise<void> {
  useSettings.setState({ settings: await bridge().call('settings.get', {}) });
}

/** @throws Refusal where the settings were not taken; those in force stay */
export async function saveSettings(settings: Settings): Promise<void> {
  useSettings.setState({ settings: await bridge().call('settings.save', settings) });
}

/** Metric until the person's choice is known. */
export const useUnits = (): Settings['units'] => useSettings(({ settings }) => settings?.units ?? 'metric');
