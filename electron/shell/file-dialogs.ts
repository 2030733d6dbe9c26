import { type BrowserWindow, dialog, type SaveDialogOptions } from 'electron';
import type { Say } from '../../shared-core/words/words.ts';
import type { ChooseFile } from '../app/choosing-files.ts';

const titles = {
  yard: 'restore.from-file',
  'other-yard': 'merge.choose',
  folder: 'backups.choose-folder',
} as const;

/** The system's own dialogs, over the window. Replacing a file is asked about by the system. */
export function fileDialogs(window: BrowserWindow, say: Say, today: () => string): ChooseFile {
  const filters: SaveDialogOptions['filters'] = [{ name: say('backups.yard-files'), extensions: ['sqlite'] }];
  const exports: SaveDialogOptions['filters'] = [{ name: say('merge.export-files'), extensions: ['json'] }];
  return async (purpose) => {
    if (purpose === 'copy') {
      const { canceled, filePath } = await dialog.showSaveDialog(window, {
        title: say('backups.save-copy'),
        defaultPath: `pintally-${today()}.sqlite`,
        filters,
      });
      return canceled || !filePath ? null : filePath;
    }
    const isFile = purpose !== 'folder';
    const { canceled, filePaths } = await dialog.showOpenDialog(window, {
      title: say(titles[purpose]),
      ...(isFile ? { filters: purpose === 'yard' ? filters : [...filters, ...exports] } : {}),
      properties: isFile ? ['openFile'] : ['openDirectory', 'createDirectory'],
    });
    return canceled ? null : (filePaths[0] ?? null);
  };
}
