import { Actions, Button, ButtonLink } from '../../renderer/ui/Button.tsx';
import { Menu } from '../../renderer/ui/Menu.tsx';
import { Tabs } from '../../renderer/ui/Tabs.tsx';
import { Unfold } from '../../renderer/ui/Unfold.tsx';
import type { Story } from './story.ts';

const nothing = () => undefined;

export const stories: Story[] = [
  {
    part: 'Button',
    states: {
      main: () => <Button kind="main">Probe</Button>,
      plain: () => <Button>Move</Button>,
      quiet: () => <Button kind="quiet">Cancel</Button>,
      danger: () => <Button kind="danger">Remove the demo yard</Button>,
      'main, disabled': () => (
        <Button kind="main" disabled>
          Probe
        </Button>
      ),
      'plain, disabled': () => <Button disabled>Move</Button>,
      'with its key': () => <Button shortcut="N">Next</Button>,
      link: () => <ButtonLink href="#nowhere">Labels</ButtonLink>,
      'a row': () => (
        <Actions>
          <Button kind="main">Save</Button>
          <Button>Cancel</Button>
        </Actions>
      ),
    },
  },
  {
    part: 'Menu',
    states: {
      closed: () => (
        <Menu
          title="More"
          items={[
            { id: 'edit', title: 'Edit', onPress: nothing },
            { id: 'air', title: 'Air', onPress: nothing },
          ]}
        />
      ),
    },
  },
  {
    part: 'Tabs',
    states: {
      'first of three': () => (
        <Tabs
          label="About the board"
          tabs={[
            { id: 'readings', title: 'Readings (8)', panel: () => <p>Eight readings.</p> },
            { id: 'weight', title: 'Weight', panel: () => <p>No weights yet.</p> },
            { id: 'moves', title: 'Moves', panel: () => <p>One move.</p> },
          ]}
        />
      ),
    },
  },
  {
    part: 'Unfold',
    states: { folded: () => <Unfold words="Details">Bytes and counters.</Unfold> },
  },
];
