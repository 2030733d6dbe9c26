import { type Settings, settingsSchema } from '../../../shared-core/contract/settings.ts';
import { letterSheetLayout, singleLabelLayout } from '../../../shared-core/labels/sheet.ts';
import type { AppContext } from '../context.ts';

const KEY = 'settings';

const defaults: Settings = {
  units: 'metric',
  sound: true,
  saveWhenSettled: true,
  labelLayouts: { sheet: letterSheetLayout, single: singleLabelLayout },
};

export function settingUseCases(context: AppContext) {
  const get = (): Settings => {
    const saved = settingsSchema.safeParse(context.yard().settings.get(KEY));
    return saved.success ? saved.data : defaults;
  };
  return {
    'settings.get': get,
    'settings.save': (settings: Settings): Settings => {
      context.yard().settings.put(KEY, settings);
      context.emit('yard.changed', {});
      return settings;
    },
  };
}
