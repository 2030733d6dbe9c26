import { useSettings } from './stores/settings.ts';

const dark = matchMedia('(prefers-color-scheme: dark)');
const contrast = matchMedia('(prefers-contrast: more)');

function show(): void {
  const chosen = useSettings.getState().settings.theme;
  const ofSystem = contrast.matches ? 'high-contrast' : dark.matches ? 'dark' : 'light';
  document.documentElement.dataset.theme = chosen === 'system' ? ofSystem : chosen;
}

/** Writes the theme onto the page, from now on: the person's choice, or the computer's own. */
export function followTheme(): void {
  show();
  useSettings.subscribe(show);
  for (const query of [dark, contrast]) query.addEventListener('change', show);
}
