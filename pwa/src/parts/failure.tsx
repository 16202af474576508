import { Component, type ComponentChildren } from "preact";
import { failureWords as words } from "../words/frame.ts";

/** Stands where a screen failed, so that no page is ever blank. */
export class Failure extends Component<{ children: ComponentChildren }, { cause?: unknown }> {
  override state: { cause?: unknown } = {};

  static override getDerivedStateFromError(cause: unknown) {
    return { cause };
  }

  override render() {
    const { cause } = this.state;
    if (cause === undefined) return this.props.children;
    return (
      <main class="page" id="main">
        <div class="banner banner-problem" role="alert">
          <h1 class="page-title">{words.title}</h1>
          <p>{words.kept}</p>
        </div>
        <p class="quiet">
          {words.detail}: {cause instanceof Error ? cause.message : String(cause)}
        </p>
        <div class="button-row">
          <button
            type="button"
            class="button button-main"
            onClick={() => this.setState({ cause: undefined })}
          >
            {words.again}
          </button>
          <a class="button" href="/" onClick={() => this.setState({ cause: undefined })}>
            {words.home}
          </a>
        </div>
      </main>
    );
  }
}
