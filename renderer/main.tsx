import './zod-without-eval.ts';
// Before the parts, whose own styles go further.
import './tokens.css';
import './base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/App.tsx';
import { keepFocusInSight } from './app/focus-in-sight.ts';
import { tellIfOpenedAgain } from './app/opened-again.ts';
import { followChanges } from './data/asking.ts';
import { installBridge, makeBridge } from './data/bridge.ts';
import { followLanguage } from './language.ts';
import { setLink } from './stores/link.ts';
import { followTheme } from './theme.ts';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';

installBridge(makeBridge(setLink));
followChanges();
followTheme();
keepFocusInSight();
tellIfOpenedAgain();
// Nobody sees a screen in one language and then in another.
followLanguage().then(() =>
  createRoot(document.getElementById('root')!).render(
    <StrictMode>
      <App />
    </StrictMode>,
  ),
);
