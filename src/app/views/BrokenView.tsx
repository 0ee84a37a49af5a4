/** Holds a fault of ours to the view it happened in: the rest of the window, and the job, go on. */
import { Component, type ReactNode } from 'react';

interface BrokenViewProps {
  /** What stops working, as people call it. */
  readonly name: string;
  readonly children: ReactNode;
}

interface BrokenViewState {
  readonly fault: string | undefined;
}

export class BrokenView extends Component<BrokenViewProps, BrokenViewState> {
  override state: BrokenViewState = { fault: undefined };

  static getDerivedStateFromError(error: unknown): BrokenViewState {
    return { fault: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    if (this.state.fault === undefined) return this.props.children;
    return (
      <div className="broken-view" role="alert">
        <p>
          {this.props.name} stopped working ({this.state.fault}). That is a fault of Isobath’s; the job is
          safe and can be saved.
        </p>
        <button type="button" onClick={() => this.setState({ fault: undefined })}>
          show it again
        </button>
      </div>
    );
  }
}
