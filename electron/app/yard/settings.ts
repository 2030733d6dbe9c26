import { type Settings, settingsSchema } from '../../../shared-core/contract/settings.ts';
import { letterSheetLayout, singleLabelLayout } from '../../../shared-core/labels/sheet.ts';
import type { YardReader } from '../../store/yard.ts';
import type { AppContext, QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';

const KEY = 'settings';

const defaults: Settings = {
  units: 'metric',
  sound: true,
  saveWhenSettled: true,
  labelLayouts: { sheet: letterSheetLayout, single: singleLabelLayout },
};

/** The settings of a yard; the usual ones where none were saved. */
export function settingsOf(yard: YardReader): Settings {
  const saved = settingsSchema.safeParse(yard.settings.get(KEY));
  return saved.success ? saved.data : defaults;
}

export const settingQueries = (context: QueryContext) =>
  ({ 'settings.get': () => settingsOf(context.yard()) }) satisfies Partial<Queries>;

export const settingCommands = (context: AppContext) =>
  ({
    'settings.edit': (changed) => {
      const settings = { ...settingsOf(context.yard()), ...changed };
      context.yard().settings.put(KEY, settings);
      return settings;
    },
  }) satisfies Partial<Commands>;
