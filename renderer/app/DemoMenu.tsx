import { useState } from 'react';
import { goToYard, openOwnYard } from '../stores/yard.ts';
import { Menu } from '../ui/Menu.tsx';
import { useWords } from '../words.ts';
import css from './demo-menu.module.css';
import { RemoveDemoDialog } from './RemoveDemoDialog.tsx';

/** Says on every screen that nothing in the demo yard is real, and leads out of it. */
export function DemoMenu() {
  const { say } = useWords();
  const [asking, setAsking] = useState(false);
  return (
    <div className={css.demo}>
      <Menu
        title={say('demo.invented')}
        items={[
          {
            id: 'leave',
            title: (
              <>
                {say('demo.leave')} <small>{say('demo.try')}</small>
              </>
            ),
            onPress: () => goToYard(openOwnYard),
          },
          { id: 'remove', title: say('demo.remove'), onPress: () => setAsking(true) },
        ]}
      />
      {asking && <RemoveDemoDialog onClose={() => setAsking(false)} />}
    </div>
  );
}
