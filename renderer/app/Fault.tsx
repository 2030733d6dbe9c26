import { Component, type ReactNode } from 'react';
import { sentenceOf } from '../stores/notices.ts';
import { Failed } from '../ui/Screen.tsx';

/** A screen that cannot be drawn is a fault of ours: the rest of the window stays, and says so. */
export class Fault extends Component<{ children: ReactNode }, { sentence: string | null }> {
  override state = { sentence: null };

  static getDerivedStateFromError = (error: unknown) => ({ sentence: sentenceOf(error) });

  override render(): ReactNode {
    const { sentence } = this.state;
    if (sentence === null) return this.props.children;
    return (
      <div className="screen column">
        <Failed sentence={sentence} again={() => this.setState({ sentence: null })} />
      </div>
    );
  }
}
