import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import '../../renderer/zod-without-eval.ts';
import '../../renderer/tokens.css';
import '../../renderer/base.css';
import './gallery.css';
import { createRoot } from 'react-dom/client';
import type { Story } from './story.ts';

const asked = new URLSearchParams(location.search);
document.documentElement.dataset.theme = asked.get('theme') ?? 'light';

const files = import.meta.glob<{ stories: Story[] }>('./*.story.tsx', { eager: true });
const stories = Object.values(files).flatMap((file) => file.stories);

createRoot(document.getElementById('root')!).render(
  <>
    <h1>Parts</h1>
    {stories.map(({ part, isWide, states }) => (
      <section key={part} aria-label={part}>
        <h2>{part}</h2>
        <div className={isWide ? 'gallery-wide' : 'gallery-states'}>
          {Object.entries(states).map(([state, Show]) => (
            <div key={state} className="gallery-state">
              <p className="gallery-name">{state}</p>
              <Show />
            </div>
          ))}
        </div>
      </section>
    ))}
  </>,
);
