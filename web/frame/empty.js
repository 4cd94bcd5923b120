// @ts-check
// What stands on a screen that has nothing to show yet: it says what is missing and where to get it.
import { html } from "../controls/ui.js";
import { link } from "../controls/route.js";
import { useNotebook } from "../notebook/notebook.js";
import { say, sayTold, sayWith } from "../words/words.js";

export function NoRoom() {
  return html`<div class="now"><h2>${say("no-room")}</h2>
    <p class="pencil">${say("no-room.hint")}</p>
    <p class="onward"><a href=${link("survey")}>${say("no-room.way")}</a></p></div>`;
}

/**
 * While the engine sleeps nothing can be worked out, and the screen says so. The ways onward under it are not seen while an
 * answer is `awaited`, which would push them from under the finger.
 * @param {{what: string, one?: boolean}} props `one`: what is waited for is one thing, not several
 */
export function Asleep({ what, one = false }) {
  const { engine } = useNotebook();
  if (engine === "awake") return html`<p class="pencil awaited" role="status">${say(one ? "asleep.one" : "asleep", { what })}</p>`;
  if (engine === "waking") return html`<p class="pencil awaited" role="status">${say("asleep.waking", { what })}</p>`;
  const way = html`<a href=${link("house")}>${say("asleep.way")}</a>`;
  return html`<p class="wrong" role="status">${sayWith("asleep.failed", { way }, { what, why: sayTold(engine.replace(/^failed: /, "")) })}</p>`;
}
