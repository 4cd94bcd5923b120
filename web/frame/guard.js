// @ts-check
// The guard: a screen that fails is shown as one that failed, with the way back. It leans on as little of the page as it
// can, for the page is what may be broken.
import { Component, html } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { link } from "../controls/route.js";
import { say, sayTold } from "../words/words.js";

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
      <header class="bar"><h1 tabindex="-1">${say("failed")}</h1></header>
      <main>
        <p class="wrong" role="alert">${say("failed.why", { why: sayTold(error) })}</p>
        <p>${say("failed.lost")}</p>
        <div class="low">
          <${Button} onTouch=${() => services.journal.exportFile()}>${say("failed.save")}<//>
          <${Button} onTouch=${() => this.setState({ error: undefined })}>${say("failed.again")}<//>
          <p class="onward"><a href=${link("survey")}>${say("to-readings")}</a><a href=${link("house")}>${say("failed.house")}</a></p>
        </div>
      </main>
    </div>`;
  }
}
