import { attempt } from '../../stores/notices.ts';
import { openDemoYard } from '../../stores/yard.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';

/** An empty yard: what Pintally does, and two ways to begin. */
export function FirstStart({ offerDemo, onAddStack }: { offerDemo: boolean; onAddStack: () => void }) {
  const { say } = useWords();
  return (
    <section className="first-start" aria-label={say('stacks.start')}>
      <StackDrawing />
      <div className="first-start-words">
        <h2>{say('stacks.start-title')}</h2>
        <ol className="first-start-steps">
          <li>{say('stacks.start-add')}</li>
          <li>{say('stacks.start-probe')}</li>
          <li>{say('stacks.start-see')}</li>
        </ol>
        <Actions>
          <Button kind="main" onClick={onAddStack}>
            {say('stacks.add-first')}
          </Button>
          {offerDemo && <Button onClick={() => attempt(openDemoYard())}>{say('stacks.open-demo')}</Button>}
        </Actions>
        {offerDemo && <p className="first-start-hint">{say('stacks.demo-hint')}</p>}
      </div>
    </section>
  );
}

/** A stickered stack with a roof over it. */
function StackDrawing() {
  const layers = [0, 1, 2, 3];
  return (
    <svg className="first-start-drawing" viewBox="0 0 200 170" aria-hidden="true">
      <path className="drawing-roof" d="M8 34 188 14 192 24 12 44z" />
      {layers.map((layer) => (
        <g key={layer} transform={`translate(0 ${54 + layer * 26})`}>
          <rect className="drawing-board" x="22" y="0" width="48" height="17" rx="2" />
          <rect className="drawing-board" x="75" y="0" width="50" height="17" rx="2" />
          <rect className="drawing-board" x="130" y="0" width="46" height="17" rx="2" />
          <path
            className="drawing-rings"
            d="M26 13c12-9 28-9 40 0M79 12c14-8 28-8 42 0M134 13c10-8 28-8 38 0"
          />
          <rect className="drawing-sticker" x="18" y="18" width="162" height="6" />
        </g>
      ))}
      <rect className="drawing-sticker" x="34" y="158" width="14" height="10" />
      <rect className="drawing-sticker" x="150" y="158" width="14" height="10" />
    </svg>
  );
}
