// @ts-check
// The guard: a screen that fails is shown as one that failed, with the way back. It leans on as little of the page as it
// can, for the page is what may be broken.
import { Component, html } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { link } from "../controls/route.js";

export class Guard extends Component {
  /** @param {unknown} error */
  static getDerivedStateFromError(error) {
    return { error };
  }

  /** @param {unknown} error */
  componentDidCatch(error) {
    console.error(error);
  }

  /** @param {{services: any, children?: any}} props @param {{error?: any}} state */
  render({ services, children }, { error }) {
    if (error === undefined) return children;
    return html`<div class="page form">
      <header class="bar"><h1 tabindex="-1">This screen failed</h1></header>
      <main>
        <p class="wrong" role="alert">It could not be shown: ${String(error?.message ?? error)}.</p>
        <p>Nothing is lost: what was saved is in the notebook on this device. Only what was typed here and not saved
          must be typed again.</p>
        <div class="low">
          <${Button} onTouch=${() => services.journal.exportFile()}>Save the notebook to a file<//>
          <${Button} onTouch=${() => this.setState({ error: undefined })}>Try this screen again<//>
          <p class="onward"><a href=${link("survey")}>To the readings</a><a href=${link("house")}>To the house</a></p>
        </div>
      </main>
    </div>`;
  }
}
