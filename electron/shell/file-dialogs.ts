import { type BrowserWindow, dialog, type SaveDialogOptions } from 'electron';
import type { Say } from '../../shared-core/words/words.ts';
import type { ChooseFile } from '../app/choosing-files.ts';

/** The system's own dialogs, over the window. Replacing a file is asked about by the system. */
export function fileDialogs(window: BrowserWindow, say: Say, today: () => string): ChooseFile {
  const filters: SaveDialogOptions['filters'] = [{ name: say('backups.yard-files'), extensions: ['sqlite'] }];
  return async (purpose) => {
    if (purpose === 'copy') {
      const { canceled, filePath } = await dialog.showSaveDialog(window, {
        title: say('backups.save-copy'),
        defaultPath: `pintally-${today()}.sqlite`,
        filters,
      });
      return canceled || !filePath ? null : filePath;
    }
    const { canceled, filePaths } = await dialog.showOpenDialog(window, {
      title: say(purpose === 'yard' ? 'restore.from-file' : 'backups.choose-folder'),
      ...(purpose === 'yard' ? { filters } : {}),
      properties: purpose === 'yard' ? ['openFile'] : ['openDirectory', 'createDirectory'],
    });
    return canceled ? null : (filePaths[0] ?? null);
  };
}
