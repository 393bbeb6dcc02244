import { Component, type ReactNode } from 'react';

interface State {
  words: string | undefined;
}

/** A page that fails says so and leaves the rest standing; what was saved is in the store. */
export class Stumble extends Component<{ children: ReactNode }, State> {
  override state: State = { words: undefined };

  static getDerivedStateFromError(error: unknown): State {
    return { words: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    const { words } = this.state;
    if (words === undefined) return this.props.children;
    return (
      <main className="waiting" role="alert">
        <p className="say">This page cannot be drawn: {words}. What was saved is there.</p>
        <p>
          <button type="button" className="btn" onClick={() => location.reload()}>
            Load it again
          </button>
        </p>
      </main>
    );
  }
}
