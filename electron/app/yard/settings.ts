import { type Settings, settingsSchema, usualSettings } from '../../../shared-core/contract/settings.ts';
import { papersOfEarlier } from '../../../shared-core/labels/paper.ts';
import type { Yard, YardReader } from '../../store/yard.ts';
import type { AppContext, QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';

const KEY = 'settings';

/** The settings of a yard; the usual ones where none were saved. */
export function settingsOf(yard: YardReader): Settings {
  return savedIn(yard).data ?? usualSettings;
}

/** Whether the disk damaged them, so that the usual ones hold. */
export const areSettingsDamaged = (yard: Pick<YardReader, 'settings'>): boolean =>
  yard.settings.has(KEY) && (yard.settings.get(KEY) === undefined || !savedIn(yard).success);

/** A yard that an earlier Pintally saved lacks what came since, and has one sheet and one single label instead of papers. */
function savedIn(yard: Pick<YardReader, 'settings'>) {
  const saved: { labelLayouts?: unknown } = yard.settings.get(KEY) ?? {};
  const labelPapers = papersOfEarlier(saved.labelLayouts);
  return settingsSchema.safeParse({ ...usualSettings, labelPapers, ...saved });
}

/** Saves the settings that changed. */
export function changeSettings(yard: Yard, changed: Partial<Settings>): Settings {
  const settings = { ...settingsOf(yard), ...changed };
  yard.transaction(() => yard.settings.put(KEY, settings));
  return settings;
}

export const settingQueries = (context: QueryContext) =>
  ({ 'settings.get': () => settingsOf(context.yard()) }) satisfies Partial<Queries>;

export const settingCommands = (context: AppContext) =>
  ({
    'settings.edit': (changed) => changeSettings(context.yard(), changed),
  }) satisfies Partial<Commands>;
