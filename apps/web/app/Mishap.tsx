import { Component, type ReactNode } from 'react';

interface State {
  readonly message: string | undefined;
}

/** A fault of ours in one view leaves the rest of the desk standing, and says that nothing is lost. */
export class Mishap extends Component<{ readonly children: ReactNode; readonly about: string }, State> {
  override state: State = { message: undefined };

  static getDerivedStateFromError(e: unknown): State {
    return { message: e instanceof Error ? e.message : String(e) };
  }

  override render(): ReactNode {
    const { message } = this.state;
    if (message === undefined) return this.props.children;
    return (
      <div className="mishap" role="alert">
        <p>
          <b>{this.props.about} could not be shown.</b> That is our fault, not your file’s. Your project is kept as it
          was.
        </p>
        <p className="quiet">{message}</p>
        <button type="button" onClick={() => this.setState({ message: undefined })}>
          Try again
        </button>
      </div>
    );
  }
}
