// @ts-check
// Keeping the page as an app: by the browser's own offer, or by the steps in words. What a browser calls itself decides
// those words and nothing else.
import { html } from "../controls/ui.js";
import { Button } from "../controls/controls.js";
import { useWatched } from "../controls/watch.js";
import { say } from "../words/words.js";
import { offered } from "./offer.js";

/** Whether this page runs as an app already. */
const isInstalled = () => matchMedia("(display-mode: standalone)").matches || /** @type {any} */ (navigator).standalone === true;

/** The kind of device, for the words. @returns {"home" | "android" | "table"} */
function kind() {
  const { userAgent, maxTouchPoints } = navigator;
  if (/iPhone|iPad|iPod/.test(userAgent)) return "home";
  if (/Macintosh/.test(userAgent) && maxTouchPoints > 1) return "home"; // an iPad that asks for pages made for a table
  return /Android/.test(userAgent) ? "android" : "table";
}

/** Nothing where it is done, and where no browser does it: what to do there first, the offline cover says. */
export function Install() {
  const { offer, done } = useWatched(offered.onChange, offered.standing);
  if (isInstalled() || !isSecureContext) return null;
  if (done) return html`<p role="status">${say("install.done")}</p>`;
  if (offer) return html`<p>${say("install.what")}</p><${Button} onTouch=${offered.take}>${say("install.take")}<//>`;
  const where = kind();
  return html`<details class="more">
    <summary>${say("install")}</summary>
    <p>${say(`install-${where}`)}</p>
    <p>${say("install.what")}</p>
    ${where === "home" ? html`<p>${say("install.empty")}</p>` : null}
  </details>`;
}
