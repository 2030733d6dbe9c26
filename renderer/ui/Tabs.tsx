import type { ReactNode } from 'react';
import { Tab, TabList, TabPanel, Tabs as TabsRoot } from 'react-aria-components';

/** In a narrow window, the row of tabs scrolls. */
function bringIntoSight(tab: HTMLElement | null): void {
  const list = tab?.parentElement;
  if (list) list.scrollLeft = tab.offsetLeft - list.offsetLeft;
}

/** Parts of a screen of which one is shown. Arrow keys go from tab to tab. */
export function Tabs({
  label,
  first,
  onTab,
  tabs,
}: {
  label: string;
  /** Which is shown at first; null for the first of them. */
  first?: string | null;
  onTab?: (id: string) => void;
  /** `panel` is made only while it is shown. */
  tabs: readonly { id: string; title: ReactNode; panel: () => ReactNode }[];
}) {
  return (
    <TabsRoot
      className="column"
      {...(tabs.some(({ id }) => id === first) && { defaultSelectedKey: first! })}
      onSelectionChange={(id) => onTab?.(String(id))}
    >
      <TabList aria-label={label} className="tabs">
        {tabs.map(({ id, title }) => (
          <Tab key={id} id={id} className="tab" {...(id === first && { ref: bringIntoSight })}>
            {title}
          </Tab>
        ))}
      </TabList>
      {tabs.map(({ id, panel }) => (
        <TabPanel key={id} id={id} className="column">
          {panel}
        </TabPanel>
      ))}
    </TabsRoot>
  );
}
