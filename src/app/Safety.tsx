/** If drawing fails, the plan is still there: undo the last change or take the file. */
import { Component, type ReactNode } from 'react';
import { undo } from './store/plan.ts';

const download = (): void => void import('./store/files.ts').then((part) => part.saveFile());

export class Safety extends Component<{ children: ReactNode }, { failed: string | null }> {
  override state: { failed: string | null } = { failed: null };

  static getDerivedStateFromError(error: unknown) {
    return { failed: error instanceof Error ? error.message : String(error) };
  }

  override render() {
    if (this.state.failed === null) return this.props.children;
    const again = () => {
      undo();
      this.setState({ failed: null });
    };
    return (
      <main className="page failed">
        <h1>The page cannot show this plan</h1>
        <p>The plan itself is safe. The reason given: {this.state.failed}</p>
        <div className="row">
          <button type="button" className="btn main" onClick={again}>
            Undo the last change
          </button>
          <button type="button" className="btn" onClick={download}>
            Download the plan
          </button>
        </div>
      </main>
    );
  }
}
