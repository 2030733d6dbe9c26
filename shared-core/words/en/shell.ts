/** What Electron shows around the window: its menu, and what is asked when the window stops. */
export const shell = {
  'shell.menu.edit': 'Edit',
  'shell.menu.undo': 'Undo',
  'shell.menu.redo': 'Redo',
  'shell.menu.cut': 'Cut',
  'shell.menu.copy': 'Copy',
  'shell.menu.paste': 'Paste',
  'shell.menu.select-all': 'Select all',
  'shell.menu.view': 'View',
  'shell.menu.reload': 'Reload',
  'shell.menu.zoom-in': 'Zoom in',
  'shell.menu.zoom-out': 'Zoom out',
  'shell.menu.zoom-usual': 'Actual size',
  'shell.menu.full-screen': 'Full screen',
  'shell.menu.window': 'Window',
  'shell.menu.minimize': 'Minimize',
  'shell.menu.close': 'Close the window',
  'shell.menu.quit': 'Quit',
  'shell.menu.help': 'Help',
  'shell.menu.guide': 'The guide',

  'shell.opened-again': 'The window stopped and was opened again. Nothing saved was lost.',
  'shell.keeps-stopping': 'The window keeps stopping.',
  'shell.keeps-stopping-detail':
    'Nothing saved was lost. Try again, or quit and restart the computer. The error report has the details.',
  'shell.not-started':
    'Pintally could not start. Nothing saved was lost. The error report has the details: {file}',

  'shell.synopsis': 'Tells board by board whether air-dried lumber is dry enough',
  'shell.why-bluetooth': 'Pintally reads your moisture meter and hygrometers over Bluetooth.',
  'shell.why-camera': 'Pintally uses the camera only while you scan a label.',
} as const;
