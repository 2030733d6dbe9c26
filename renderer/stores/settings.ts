import { create } from 'zustand';
import { type Settings, usualSettings } from '../../shared-core/contract/settings.ts';
import { type DisplayUnits, unitsOfRegion } from '../../shared-core/units/length.ts';
import { bridge } from '../data/bridge.ts';
import { changedFields } from '../data/changed-fields.ts';
import { onceATurn } from '../data/once-a-turn.ts';
import { region } from '../region.ts';

/** The settings in force; what is usual, in metric units, until they have come. */
export const useSettings = create<{ settings: Settings }>()(() => ({
  settings: { ...usualSettings, units: 'metric' },
}));

/**
 * Shows the settings at once and saves those that changed.
 * @throws Refusal where they were not taken; then those before are shown again
 */
export async function saveSettings(settings: Settings): Promise<void> {
  const before = useSettings.getState().settings;
  useSettings.setState({ settings });
  try {
    const changed = changedFields(before, settings);
    useSettings.setState({ settings: await bridge().command('settings.edit', changed) });
  } catch (refusal) {
    useSettings.setState({ settings: before });
    throw refusal;
  }
}

const unitsHere = onceATurn(() => unitsOfRegion(region().locale));

/** The person's choice, or what the computer's region has. */
const unitsOf = ({ settings }: { settings: Settings }): DisplayUnits => settings.units ?? unitsHere();
export const useUnits = (): DisplayUnits => useSettings(unitsOf);
export const unitsNow = (): DisplayUnits => unitsOf(useSettings.getState());
