/** Keeps a panel that breaks from taking the page with it: says what broke and what to do, and tries again on request. */
import { Component, type ReactNode } from 'react';

interface Props {
  /** What is inside, as it follows "The" in the message: "chart", "page". */
  what: string;
  children: ReactNode;
}

export class FailureBoundary extends Component<Props, { message: string | null }> {
  override state: { message: string | null } = { message: null };

  static getDerivedStateFromError(error: unknown): { message: string } {
    return { message: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    if (this.state.message === null) return this.props.children;
    return (
      <div className="failure" role="alert">
        <p>
          The {this.props.what} could not be drawn: {this.state.message}. Your piece is kept; draw it again, or save the
          project and open it anew.
        </p>
        <button type="button" onClick={() => this.setState({ message: null })}>
          Draw again
        </button>
      </div>
    );
  }
}
