// @ts-check
// What stands on a screen that has nothing to show yet: it says what is missing and where to get it.
import { html } from "../controls/ui.js";
import { link } from "../controls/route.js";
import { useNotebook } from "../notebook/notebook.js";

export function NoRoom() {
  return html`<div class="now"><h2>No room yet</h2>
    <p class="pencil">Walk a room first: everything else follows from its readings.</p>
    <p class="onward"><a href=${link("survey")}>Make a house and a room</a></p></div>`;
}

/**
 * What comes after an answer on a screen, and is there without one too: but not while one is on its way, which would push it
 * from under the finger. @param {{heard: boolean, children?: any}} props
 */
export function Onward({ heard, children }) {
  const { engine } = useNotebook();
  return heard || engine !== "awake" ? html`<p class="onward">${children}</p>` : null;
}

/** While the engine sleeps nothing can be worked out, and the screen says so. @param {{what: string}} props */
export function Asleep({ what }) {
  const { engine } = useNotebook();
  if (engine === "awake") return html`<p class="pencil" role="status">${what} are being worked out.</p>`;
  if (engine === "waking") return html`<p class="pencil" role="status">Engine waking. ${what} will appear here.</p>`;
  return html`<p class="wrong" role="status">${what} cannot be worked out: the engine is not running (${engine.replace(/^failed: /, "")}).
    Readings can still be taken and are kept. <a href=${link("house")}>Start it again under House</a></p>`;
}
